/** The rows that head a table, and what each of its columns holds. */
package clearbed.recognise.schedule.column;
