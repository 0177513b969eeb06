/**
 * How any sheet is written: cells with their looks, heights of rows, links to documents, charts.
 */
package clearbed.report.workbook.cell;
