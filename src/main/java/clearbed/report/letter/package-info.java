/** Questions ready to send. */
package clearbed.report.letter;
