/** What was not understood as lines of an office layer, to be confirmed by hand. */
package clearbed.report.teach;
