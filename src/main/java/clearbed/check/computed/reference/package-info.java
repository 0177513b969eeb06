/** Computed checks of what the set refers to: standards, sections, sheets and details. */
package clearbed.check.computed.reference;
