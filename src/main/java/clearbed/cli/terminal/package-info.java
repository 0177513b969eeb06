/** How the program speaks: exit codes, failures in one line, progress. */
package clearbed.cli.terminal;
