/** Notes in PDF files, at the words that they are about. */
package clearbed.report.annotate.pdf;
