/**
 * Computed checks of one entry, a class each: the tile, what is beneath it, how it is walked on.
 */
package clearbed.check.computed.entry;
