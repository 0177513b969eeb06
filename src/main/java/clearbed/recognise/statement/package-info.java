/** What a stretch of text says of an attribute, and what it limits that to. */
package clearbed.recognise.statement;
