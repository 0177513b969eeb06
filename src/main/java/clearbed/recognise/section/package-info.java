/** Running text read as sections: articles, clauses, what they state. */
package clearbed.recognise.section;
