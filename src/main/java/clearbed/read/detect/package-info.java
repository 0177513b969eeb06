/** The format of a file, the charset of a text and what sets its values apart, told by content. */
package clearbed.read.detect;
