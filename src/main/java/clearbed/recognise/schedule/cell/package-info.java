/** A cell by itself: marks, figures, units, and what each kind of column would make of it. */
package clearbed.recognise.schedule.cell;
