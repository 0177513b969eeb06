/** What people typed in the earlier workbook, and how it is found, kept and set aside. */
package clearbed.report.workbook.typed;
