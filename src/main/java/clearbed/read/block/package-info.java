/**
 * Blocks in the making: their words and the marks on them, numbers of lists, what hangs on a
 * paragraph or stands in the margin, and what of it is to be said.
 */
package clearbed.read.block;
