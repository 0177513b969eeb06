package clearbed.read.block;

import clearbed.model.document.Document.Gap;
import clearbed.model.document.Document.GapFate;
import clearbed.model.document.Origin;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Gathers what is to be said of a text: like marks in paragraphs that follow are said once. */
public final class Gaps {
  /** Words that were read are shown to find them by, not in full. */
  private static final int SHOWN = 200;

  private final List<Gap> gaps = new ArrayList<>();
  private MarkedRun run;

  /** Marked paragraphs without others between them. */
  private record MarkedRun(Mark mark, Origin first, Integer last, StringBuilder words) {
    boolean goesOn(Mark next, Origin at) {
      return next == mark
          && Objects.equals(at.part(), first.part())
          && at.paragraph() != null
          && last != null
          && at.paragraph() - last <= 1;
    }

    Gap gap() {
      boolean several = last != null && last > first.paragraph();
      String reach = several ? ", down to paragraph " + last : "";
      String shown = words.length() > SHOWN ? words.substring(0, SHOWN) + "\u2026" : words + "";
      return new Gap(first.withText(shown), mark.reason() + reach, mark.fate());
    }
  }

  public void add(Origin origin, String reason) {
    add(new Gap(origin, reason));
  }

  public void add(Origin origin, String reason, GapFate fate) {
    add(new Gap(origin, reason, fate));
  }

  void add(Gap gap) {
    endRun();
    gaps.add(gap);
  }

  /** What the marks on words of a paragraph at this place say. */
  public void add(Origin origin, MarkedText text) {
    for (MarkedText.MarkedWords piece : text.pieces()) add(origin, piece);
  }

  public void add(Origin origin, MarkedText.MarkedWords piece) {
    if (piece.mark().takesAway()) {
      add(origin.withText(piece.words()), piece.mark().reason(), piece.mark().fate());
    } else {
      goOn(origin, piece);
    }
  }

  private void goOn(Origin origin, MarkedText.MarkedWords piece) {
    boolean same = run != null && run.goesOn(piece.mark(), origin);
    if (!same) endRun();
    StringBuilder words = same ? run.words.append(" / ") : new StringBuilder();
    Origin first = same ? run.first : origin;
    run = new MarkedRun(piece.mark(), first, origin.paragraph(), words.append(piece.words()));
  }

  private void endRun() {
    if (run == null) return;
    gaps.add(run.gap());
    run = null;
  }

  public List<Gap> list() {
    endRun();
    return List.copyOf(gaps);
  }
}
