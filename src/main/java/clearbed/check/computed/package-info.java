/** Checks that take arithmetic or the whole set: a class each, and what they share. */
package clearbed.check.computed;
