/** Rows below a heading: what they say, which of them are items, groups, notes. */
package clearbed.recognise.schedule.row;
