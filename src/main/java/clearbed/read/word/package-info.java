/** Word documents since 2007, as their reader sees them. */
package clearbed.read.word;
