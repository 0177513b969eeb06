package clearbed.recognise.section;

import clearbed.recognise.section.outline.SectionText;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.vocabulary.SectionRole;

/**
 * What is known of a section before its clauses are read.
 *
 * @param role of the section in tile work; null where it is unknown
 * @param mark that figures have before their decimals
 * @param amending true for an addendum, whose words change those of others
 * @param silent true for notes that nowhere speak of tile work
 */
record SectionReading(
    SectionText text, SectionRole role, DecimalMark mark, boolean amending, boolean silent) {
  /** True where nothing tells what the section is about. */
  boolean unknown() {
    return role == null && !text.notes();
  }
}
