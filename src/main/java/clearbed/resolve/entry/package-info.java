/** An entry while it is put together, and which statements reach it. */
package clearbed.resolve.entry;
