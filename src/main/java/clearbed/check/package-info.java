/**
 * Holds entries against the rule files and says what is missing, inadequate, incompatible,
 * conflicting or open.
 */
package clearbed.check;
