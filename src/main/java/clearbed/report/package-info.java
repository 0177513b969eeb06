/** Findings written down: workbook, JSON, SARIF, console, question list. */
package clearbed.report;
