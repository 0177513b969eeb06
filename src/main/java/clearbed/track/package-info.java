/** Answers and states carried from one issue of the findings to the next. */
package clearbed.track;
