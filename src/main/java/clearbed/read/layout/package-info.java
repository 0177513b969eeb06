/**
 * What lines, blanks and marks of any format mean: paragraphs, columns without rules, words struck
 * out.
 */
package clearbed.read.layout;
