/** What figures in a part of a text are of: widths, sizes, flatness and the like. */
package clearbed.recognise.statement.figure;
