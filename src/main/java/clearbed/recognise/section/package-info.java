/** Running text: articles, clauses, what each is about, and what it changes of others. */
package clearbed.recognise.section;
