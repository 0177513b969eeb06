package clearbed.recognise.schedule.column;

import clearbed.base.Memo;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.HeadingEvidence;
import clearbed.recognise.vocabulary.HeadingEvidence.Heard;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * What the headings over a column say of it. Each is listened to once: it is weighed over other
 * cells, with other rows and in other tables.
 */
final class HeardHeadings {
  /** So much more a heading points to what the standard is of that it names. */
  private static final double CITED = 1.6;

  /** Short forms spelt out may have been meant otherwise. */
  private static final double SPELT = 0.9;

  private static final Heard OF_TEST = new Heard(SPELT, "standard in the heading", false);

  /** Joints, grouts and sealants have marks of their own, which are not those of tiles. */
  static final Pattern OF_OTHERS =
      Pattern.compile("joint|grout|seal|mortar|adh|room|space", Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;
  private final HeadingEvidence evidence;
  private final Memo<ColumnWords.Heads, Map<String, Heard>> heard = new Memo<>(h -> h.text());
  private final Memo<String, Set<String>> families = Memo.ofTexts();

  HeardHeadings(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.evidence = vocabulary.headings();
  }

  /** Attributes and roles that they point to. */
  Map<String, Heard> over(ColumnWords.Heads w) {
    return heard.get(w, () -> find(w));
  }

  /** Its own words before those of its group. */
  private Map<String, Heard> find(ColumnWords.Heads w) {
    Map<String, Heard> out = new LinkedHashMap<>();
    if (HeadingEvidence.isMoney(w.text())) {
      out.put(HeadingEvidence.OTHER, new Heard(1, "money", false));
      return out;
    }
    for (String words : variants(HeadingWords.joined(w.top(), w.bottom())))
      evidence
          .of(words)
          .forEach((meaning, by) -> out.merge(meaning, by, HeadingEvidence::stronger));
    boolean group = w.group() != ColumnWords.Group.NONE;
    if (group) {
      Set<String> of = w.group() == ColumnWords.Group.OVER ? families(w.top()) : Set.of();
      for (String words : variants(w.bottom()))
        evidence
            .of(words)
            .forEach(
                (meaning, by) -> {
                  double strength = suits(meaning, of, w.top()) ? ColumnScores.EXACT : 0.4;
                  out.merge(meaning, by.times(strength), HeadingEvidence::stronger);
                });
    }
    HeadingWords.tests(vocabulary, w.text())
        .forEach(id -> out.merge(id, OF_TEST, HeadingEvidence::stronger));
    Set<String> named = families(w.text());
    if (!named.isEmpty()) out.replaceAll((meaning, by) -> ofNamed(meaning, by, named));
    Set<String> cited = familiesOfStandards(w.text());
    if (!cited.isEmpty()) out.replaceAll((meaning, by) -> ofCited(meaning, by, cited));
    Header.Column known = HeadingWords.column(vocabulary, 0, w.top(), w.bottom());
    boolean own = w.group() != ColumnWords.Group.OVER || w.bottom().isEmpty();
    if (known.role() != Header.Role.OTHER
        && suits(meaning(known), cited, "")
        && (own || suits(meaning(known), families(w.top()), w.top())))
      out.merge(
          meaning(known),
          known.evidence().why().equals(HeadingWords.SHORT)
              ? new Heard(SPELT, "short forms", true)
              : new Heard(1, "heading", false),
          HeardHeadings::better);
    return out;
  }

  /** The parts of the work that the standard is of which a heading opens with: "C920 use". */
  private Set<String> familiesOfStandards(String heading) {
    Set<String> out = new TreeSet<>();
    String plain = PlainText.of(heading).replace('_', ' ').strip();
    List<Citations.Found> cited = Citations.find(plain);
    // "Silicone, ASTM C920" is a product, and heads nothing.
    boolean opens =
        cited.size() == 1 && cited.get(0).start() == 0 && cited.get(0).end() < plain.length();
    if (!opens) return out;
    vocabulary
        .standards()
        .of(cited.get(0).standard().designation())
        .ifPresent(
            info ->
                info.states().stream()
                    .flatMap(id -> vocabulary.attribute(id).stream())
                    .forEach(a -> out.add(a.family())));
    return out;
  }

  private Heard ofCited(String meaning, Heard by, Set<String> families) {
    boolean its = suits(meaning, families, "");
    return its ? by.times(Math.min(CITED, 1 / by.strength())) : by.times(ColumnScores.HINT);
  }

  /** The stronger of two, in the words that say which word is meant. */
  private static Heard better(Heard one, Heard other) {
    boolean named = one.why().startsWith("abbreviation") && other.isShort();
    return named
        ? new Heard(Math.max(one.strength(), other.strength()), one.why(), true)
        : HeadingEvidence.stronger(one, other);
  }

  /** A heading that names one part of the work is hardly about another. */
  private Heard ofNamed(String meaning, Heard by, Set<String> named) {
    boolean other =
        WorkFamilies.PARTS.stream().anyMatch(p -> !named.contains(p) && isOf(meaning, p));
    return other && by.strength() < ColumnScores.EXACT ? by.times(0.6) : by;
  }

  /** The words of a heading without its standards, once without its brackets and once with them. */
  private Set<String> variants(String heading) {
    StringBuilder plain = new StringBuilder(PlainText.of(heading));
    for (Citations.Found f : Citations.find(plain.toString()))
      for (int i = f.start(); i < f.end(); i++) plain.setCharAt(i, ' ');
    String text = plain.toString();
    Set<String> out = new LinkedHashSet<>();
    out.add(HeadingWords.clean(vocabulary, text));
    if (text.indexOf('(') >= 0 && Quantities.unitOfHeader(text) == null)
      out.add(HeadingWords.clean(vocabulary, text.replaceAll("[()\\[\\]]", " ")));
    return out;
  }

  /** What a heading says below the heading of a group on another part of the work is doubtful. */
  private boolean suits(String meaning, Set<String> families, String group) {
    if (meaning.equals(HeadingEvidence.TAG)) return !OF_OTHERS.matcher(group).find();
    if (families.isEmpty()) return true;
    return vocabulary.attribute(meaning).map(a -> families.contains(a.family())).orElse(false);
  }

  private static String meaning(Header.Column c) {
    return switch (c.role()) {
      case TAG -> HeadingEvidence.TAG;
      case MATERIAL -> HeadingEvidence.MATERIAL;
      case SURFACE -> HeadingEvidence.SURFACE + c.surface();
      case ATTRIBUTE -> c.attribute().id();
      case CALLS, FORMER, UNASKED, OTHER -> HeadingEvidence.OTHER;
    };
  }

  /** Parts of the work that the words name. */
  Set<String> families(String words) {
    return families.get(words, () -> evidence.familiesOf(HeadingWords.clean(vocabulary, words)));
  }

  /** True of an attribute of that part of the work. */
  boolean isOf(String meaning, String family) {
    return vocabulary.attribute(meaning).filter(a -> a.family().equals(family)).isPresent();
  }
}
