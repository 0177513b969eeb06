/** One project from what its documents say to its report: the rules chosen, run and summed up. */
package clearbed.project;
