/** A statement and what limits it: tags, kinds of tile, places. */
package clearbed.recognise.statement.limit;
