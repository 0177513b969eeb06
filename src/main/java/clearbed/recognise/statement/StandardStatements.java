package clearbed.recognise.statement;

import clearbed.model.value.Content;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.ClassCodes;
import clearbed.recognise.statement.code.ClauseNumbers;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.StandardInfo;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** The standards that a text requires, by the attribute they state. */
final class StandardStatements {
  private static final String FACE_MOUNTED = "process.faceMounted";
  private static final Pattern MOSAIC = Pattern.compile("\\bmosaics?\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern BE_TESTED =
      Pattern.compile(
          "\\b(?:be|is|are|and) tested (?:to|by|under|per|against|in accordance with) $",
          Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;

  StandardStatements(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  void addTo(Passage p) {
    Set<String> stated = new HashSet<>();
    for (Citations.Found found : Citations.find(p.text)) {
      if (Citations.ofASeries(p.text, found)) continue;
      // "W41/340" under "Adhesive" calls a clause.
      if (ClauseNumbers.isOne(found.asWritten())) continue;
      for (String id : statedBy(p, found)) {
        stated.add(id);
        state(p, vocabulary.attribute(id).orElseThrow(), found);
      }
    }
    implied(p, stated);
  }

  private void state(Passage p, Attribute attribute, Citations.Found found) {
    String before = p.text.substring(0, found.start());
    boolean tested = vocabulary.list("clause.tested").endsAt(before, before.length());
    if (tested && attribute.id().endsWith(".standard") && !tileTested(p, before, attribute)) return;
    boolean about =
        vocabulary.list("negation.notAbout").startsAt(p.text, found.end())
            || vocabulary.list("clause.aside").endsAt(before, before.length())
            || vocabulary.list("clause.criteria").startsAt(p.text, found.end());
    if (about) return;
    boolean negated =
        p.negated(found.start(), found.end())
            || needsNone(p, attribute.family(), found.end())
            || vocabulary.asksNothing(attribute.id(), p.text);
    p.add(attribute, found.standard(), negated, found.start(), found.end());
  }

  /** "GT-1 and GT-2 shall be tested to ANSI A137.2" asks for it; "0.6 mm, tested to" does not. */
  private static boolean tileTested(Passage p, String before, Attribute attribute) {
    return attribute.id().equals("tile.standard")
        && BE_TESTED.matcher(before).find()
        && Quantities.find(p.text).isEmpty()
        && (!TagFinder.tags(before).isEmpty() || TileWords.tile(before));
  }

  /** "DIN 18534-1 class W0-I, no sealing layer needed". */
  private boolean needsNone(Passage p, String family, int end) {
    String rest = p.text.substring(end);
    Phrases.Hit none = vocabulary.list("negation.needsNone").first(rest);
    return none != null
        && vocabulary.family(rest.substring(none.start(), none.end())).equals(family);
  }

  /** A class names the standard that it is of: {@code CG2WA}, {@code F-25LM}. */
  private void implied(Passage p, Set<String> stated) {
    for (MatchResult code : ClassCodes.ANY.matcher(p.text).results().toList()) {
      StandardInfo info = vocabulary.standards().ofCode(code.group().replace(" ", "")).orElse(null);
      if (info == null || stated.contains(info.states().get(0))) continue;
      Attribute attribute = vocabulary.attribute(info.states().get(0)).orElseThrow();
      boolean plain =
          ClassCodes.unmistakable(code.group()).isEmpty()
              && !attribute.id().equals(p.context.attribute())
              && !p.familyNear(code.start(), code.end()).equals(attribute.family());
      if (plain || p.isSubject(code.end())) continue;
      Content.Standard standard = new Content.Standard(info.designation(), "");
      boolean negated = p.negated(code.start(), code.end());
      p.add(attribute, standard, negated, code.start(), code.end());
    }
  }

  /**
   * "Movement joints to BS 5385-4" says nothing of how mosaic sheets are set, nor does a code of
   * tile work that is named without them.
   */
  private boolean spoken(Passage p, String attribute, String family) {
    if (!attribute.equals(FACE_MOUNTED)) return true;
    String words = p.title() + " " + p.text;
    return !family.equals("movement")
        && (vocabulary.list("clause.onMounting").in(words) || MOSAIC.matcher(words).find());
  }

  /** With parts of the work the one that is spoken of, else all. */
  private List<String> statedBy(Passage p, Citations.Found found) {
    StandardInfo info = vocabulary.standards().of(found.standard().designation()).orElse(null);
    if (info == null) {
      boolean column = p.context.attribute().endsWith(".standard");
      return column ? List.of(p.context.attribute()) : List.of();
    }
    if (info.states().size() < 2) return info.states();
    String family = p.familyNear(found.start(), found.end());
    if (info.families().isEmpty())
      return info.states().stream().filter(id -> spoken(p, id, family)).toList();
    return List.of(info.states().get(Math.max(0, info.families().indexOf(family))));
  }
}
