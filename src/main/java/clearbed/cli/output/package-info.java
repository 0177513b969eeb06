/** Which files a command may write, and what is said when it is stopped. */
package clearbed.cli.output;
