/** Clauses and sections, what each is about, and what it changes of others. */
package clearbed.recognise.section.clause;
