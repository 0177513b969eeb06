/**
 * Many projects, each checked by itself: which they are, what each came to, and what that adds up
 * to.
 */
package clearbed.survey;
