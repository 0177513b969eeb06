/** The sheet of calculations, with formulas that reckon again what people change. */
package clearbed.report.workbook.calculation;
