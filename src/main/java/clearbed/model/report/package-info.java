/**
 * The nouns of what came of it: findings, verdicts, calculations, the account of the reading, the
 * log. Immutable.
 */
package clearbed.model.report;
