/** Quantities of tile and of the products that go with it. Pure functions. */
package clearbed.calc.takeoff;
