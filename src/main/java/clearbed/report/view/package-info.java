/** The documents on one page, what was read of them told apart, the findings beside the words. */
package clearbed.report.view;
