/** The command that checks many projects, and its parts for other machines. */
package clearbed.cli.survey;
