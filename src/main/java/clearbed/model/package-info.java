/**
 * The nouns that every step shares: immutable records and sealed types, no behaviour beyond their
 * own sense.
 */
package clearbed.model;
