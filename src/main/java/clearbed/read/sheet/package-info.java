/** Spreadsheets and delimited text, each sheet a table with its addresses. */
package clearbed.read.sheet;
