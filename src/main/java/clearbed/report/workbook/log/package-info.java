/** The sheets that people work in: findings and questions, with the answers to them. */
package clearbed.report.workbook.log;
