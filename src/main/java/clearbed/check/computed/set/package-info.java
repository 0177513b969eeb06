/** Computed checks of the whole set, a class each, and the quantities that sets give. */
package clearbed.check.computed.set;
