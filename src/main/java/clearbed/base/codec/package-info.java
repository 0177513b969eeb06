/** Records to bytes and back, for another process or another day. */
package clearbed.base.codec;
