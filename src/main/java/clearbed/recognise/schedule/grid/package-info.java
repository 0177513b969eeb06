/** Tables written otherwise than one tile to a row, laid out anew before they are read. */
package clearbed.recognise.schedule.grid;
