/** The arithmetic of joints: movement, width, depth, spacing, sealant, grout. Pure functions. */
package clearbed.calc.joint;
