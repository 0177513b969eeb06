/** Pages of letters and drawn lines, put together again into paragraphs and tables. */
package clearbed.read.pdf;
