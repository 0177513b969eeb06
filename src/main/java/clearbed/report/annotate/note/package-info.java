/** What is to be written at which place of a document, and what could not be. */
package clearbed.report.annotate.note;
