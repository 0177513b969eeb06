/** The command that works out movement joints from figures alone. */
package clearbed.cli.joint;
