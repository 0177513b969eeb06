package clearbed.recognise.section.outline;

import clearbed.model.document.Origin;
import clearbed.recognise.section.outline.Wordings.Wording;
import clearbed.recognise.statement.limit.Limits;

/**
 * What a line says to those below it.
 *
 * @param family part of the work that it says, or that what stands above it says where it says none
 * @param limits its own and those of what stands above it
 */
public record OutlineNode(Wording wording, String family, Limits limits, Origin at) {
  public boolean heading() {
    return wording.heading();
  }

  public String text() {
    return wording.words();
  }
}
