/**
 * Reads one document so that it cannot spoil the run: on a thread or in a process of its own,
 * within limits.
 */
package clearbed.read.guard;
