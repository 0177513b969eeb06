/**
 * What guidelines and tables give: spacing and width of movement joints, expansion of materials.
 */
package clearbed.calc.guideline;
