/** What a survey of many projects writes: a workbook, and tables for other programs. */
package clearbed.report.survey;
