/** How outputs of this program are marked, and how they are known again. */
package clearbed.mark;
