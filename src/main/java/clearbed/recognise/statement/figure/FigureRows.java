package clearbed.recognise.statement.figure;

import clearbed.model.value.Content;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.regex.Pattern;

/** Figures of one part, of which one tells what another is of. */
final class FigureRows {
  private static final Pattern OTHER_END =
      Pattern.compile(
          "[^.;:\\d]{0,25}\\b(?:nor|and|but|or)\\s(?:not |no |never )?(?:more|less|over|under|greater|wider|narrower|larger|smaller|higher|lower|colder|hotter|warmer|exceed\\w*|above|below)\\b[^.;:\\d]*",
          Pattern.CASE_INSENSITIVE);

  private static final String DEPTH = "sealant.depth";

  private static final Pattern DEEP =
      Pattern.compile("\\.?\\s+(?:deep|in depth)\\b", Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;
  private final FigureSubjects subjects;

  FigureRows(Vocabulary vocabulary, FigureSubjects subjects) {
    this.vocabulary = vocabulary;
    this.subjects = subjects;
  }

  /**
   * The attribute of each figure of a part, or null; such as repeat the form of the part before are
   * of the same things.
   */
  List<Attribute> attributes(Passage p, List<Quantities.Found> plain) {
    List<Attribute> named = new ArrayList<>();
    for (Quantities.Found f : plain)
      named.add(subjects.named(p, (Content.Amount) f.content(), f.start(), f.end()));
    depthApart(p, plain, named);
    otherEnds(p, plain, named);
    List<Attribute> before = p.goesOn ? p.carried.row() : List.of();
    return repeats(plain, named, before) ? before : named;
  }

  /** "Not less than 1/16 in nor more than 1/8 in wide": both are the ends of one thing. */
  private void otherEnds(Passage p, List<Quantities.Found> plain, List<Attribute> named) {
    for (int i = 1; i < plain.size(); i++) {
      Attribute first = named.get(i - 1);
      Quantities.Found f = plain.get(i);
      String between = p.text.substring(plain.get(i - 1).end(), f.start());
      if (first != null
          && OTHER_END.matcher(between).matches()
          && FigureSubjects.fits(first, (Content.Amount) f.content())) named.set(i, first);
    }
  }

  /** "1/4 in with sealant 1/8 in deep": one of them is the depth, the other something else. */
  private void depthApart(Passage p, List<Quantities.Found> plain, List<Attribute> named) {
    for (int i = 0; i < plain.size(); i++) {
      Attribute a = named.get(i);
      if (a == null || !a.id().equals(DEPTH) || isDeep(p, plain.get(i))) continue;
      boolean other = false;
      for (int k = 0; k < plain.size(); k++)
        other |= k != i && named.get(k) == a && isDeep(p, plain.get(k));
      if (!other) continue;
      Quantities.Found f = plain.get(i);
      Attribute next =
          subjects.nearest(
              p,
              f.start(),
              f.end(),
              b -> b != a && FigureSubjects.mayBe((Content.Amount) f.content(), b));
      if (next == null) next = widthByLead(p, (Content.Amount) f.content());
      if (next != null) named.set(i, next);
    }
  }

  /** "Widths: GT-1 and GT-2, 1/4 in with sealant 1/8 in deep". */
  private Attribute widthByLead(Passage p, Content.Amount amount) {
    String lead = p.whole.substring(0, p.leadEnd);
    return vocabulary
        .attribute(FigureSubjects.MOVEMENT_WIDTH)
        .filter(a -> a.words().cues().in(lead) && FigureSubjects.fits(a, amount))
        .orElse(null);
  }

  private static boolean isDeep(Passage p, Quantities.Found f) {
    return DEEP.matcher(p.whole).region(f.end(), p.whole.length()).lookingAt();
  }

  /**
   * "GT-1, 3/4 in with sealant 3/8 in deep; GT-2, 1/2 in with sealant 1/4 in deep": where two
   * figures would be of one thing, or one of nothing, they are of what those before were of.
   */
  private static boolean repeats(
      List<Quantities.Found> plain, List<Attribute> named, List<Attribute> before) {
    if (before.size() < 2 || before.size() != plain.size()) return false;
    if (new HashSet<>(before).size() < before.size()) return false;
    boolean clear = !named.contains(null) && new HashSet<>(named).size() == named.size();
    if (clear) return false;
    for (int i = 0; i < plain.size(); i++) {
      Attribute own = named.get(i);
      if (!FigureSubjects.fits(before.get(i), (Content.Amount) plain.get(i).content()))
        return false;
      if (own != null && !before.contains(own)) return false;
    }
    return true;
  }
}
