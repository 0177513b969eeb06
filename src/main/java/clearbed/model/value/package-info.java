/**
 * The nouns of what documents state: quantities, contents, values with their scope, entries.
 * Immutable.
 */
package clearbed.model.value;
