/**
 * The arithmetic of tile work: movement and joint width, depth, deflection, flatness, quantities.
 * Pure functions over quantities; every result can be had with its working, as a reader would redo
 * it.
 */
package clearbed.calc;
