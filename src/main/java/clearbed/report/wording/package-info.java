/** Small turns of phrase, cautions, and text made fit for where it goes. */
package clearbed.report.wording;
