/**
 * Files, folders and archives become {@link clearbed.model.document.Document}s: one reader per
 * format family, each block with its place, and every file that is not read with the reason why.
 */
package clearbed.read;
