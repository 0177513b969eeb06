/**
 * The findings workbook, put together from its rooms, and the sheets that each issue writes anew.
 */
package clearbed.report.workbook;
