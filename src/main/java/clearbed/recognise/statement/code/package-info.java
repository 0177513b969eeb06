/** Marks of tiles, designations of standards and numbers of clauses, as texts write them. */
package clearbed.recognise.statement.code;
