/**
 * Joins the facts of all documents into one entry per glass tile tag; says which words govern it.
 */
package clearbed.resolve;
