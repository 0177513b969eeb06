/** The parts of a text, what each speaks of, and which values its words limit. */
package clearbed.recognise.statement.part;
