/**
 * Rules as data: what a rule file says, how it is read and laid over another, how a rule can come
 * out.
 */
package clearbed.check.rules;
