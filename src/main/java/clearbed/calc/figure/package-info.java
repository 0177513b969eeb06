/**
 * Figures that go into arithmetic and come out of it, with the working as a reader would redo it.
 */
package clearbed.calc.figure;
