/** Options that several commands share, and what is wrong with a command line. */
package clearbed.cli.option;
