package clearbed.report.annotate.note;

import clearbed.model.document.Origin;

/**
 * A note that is not where it should be.
 *
 * @param finding id of the finding
 * @param marked true when it is in the copy, near its place; false when it is in no copy
 */
public record Shortfall(String finding, Origin place, boolean marked, String reason) {}
