/** Tables: which are schedules, what their columns hold, and what their rows say. */
package clearbed.recognise.schedule;
