/** Schedules on a grid of cells, wherever they stand, and how each of their cells ended. */
package clearbed.recognise.schedule;
