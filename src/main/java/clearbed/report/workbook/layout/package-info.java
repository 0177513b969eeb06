/**
 * What stands in a workbook: columns known by their headers, rows by their ids, whatever was moved.
 */
package clearbed.report.workbook.layout;
