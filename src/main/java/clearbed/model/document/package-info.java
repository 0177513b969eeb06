/**
 * The nouns of what was read: documents with their blocks, tables and cells, and where each stands.
 * Immutable.
 */
package clearbed.model.document;
