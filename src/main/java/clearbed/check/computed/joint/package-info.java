/** Computed checks of joints, a class each: movement joints, their sealant, grout joints. */
package clearbed.check.computed.joint;
