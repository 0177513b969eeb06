/** What the places of lines and blanks mean: paragraphs, lists, columns without rules. */
package clearbed.read.layout;
