/** Plain text and Markdown: paragraphs, and tables drawn with bars, dashes or blanks. */
package clearbed.read.text;
