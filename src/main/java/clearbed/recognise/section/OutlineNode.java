package clearbed.recognise.section;

import clearbed.model.document.Origin;
import clearbed.recognise.section.Wordings.Wording;
import clearbed.recognise.statement.Limits;

/**
 * What a line says to those below it.
 *
 * @param family part of the work that it says, or that what stands above it says where it says none
 * @param limits its own and those of what stands above it
 */
record OutlineNode(Wording wording, String family, Limits limits, Origin at) {
  boolean heading() {
    return wording.heading();
  }

  String text() {
    return wording.words();
  }
}
