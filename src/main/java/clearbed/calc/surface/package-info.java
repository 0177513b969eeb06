/** The arithmetic of surfaces: flatness, evenness, deflection. Pure functions. */
package clearbed.calc.surface;
