/** The command line. */
package clearbed.cli;
