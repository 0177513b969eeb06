/** What a stretch of text says of each attribute, found in every way that it may be said. */
package clearbed.recognise.statement;
