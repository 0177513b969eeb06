/** Files: put into place whole, packed alike, held for the time of a run. */
package clearbed.base.io;
