/** Cards, one to a tile or a room, and sheets of properties, laid out as schedules. */
package clearbed.recognise.schedule.card;
