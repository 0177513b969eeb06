/** The findings workbook: its sheets, what people typed on them, and how an issue carries it on. */
package clearbed.report.workbook;
