/**
 * From blocks of text and tables to facts: schedule rows, section clauses, citations, quantities,
 * statements.
 */
package clearbed.recognise;
