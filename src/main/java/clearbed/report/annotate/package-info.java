/** Copies of the source documents with the findings written at their places. */
package clearbed.report.annotate;
