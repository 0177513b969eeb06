package clearbed.recognise.schedule.column;

import clearbed.model.value.Unit;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.UnitWords;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.HeaderWords;
import clearbed.recognise.vocabulary.HeadingEvidence;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.taught.Taught;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** What the words of a heading mean by themselves, where the vocabulary has them. */
public final class HeadingWords {
  /** "3 Grout" of a build-up whose layers are counted. */
  private static final Pattern COUNTED = Pattern.compile("^\\d{1,2}\\)? (?=\\p{L}{4})");

  /** "G.J.", "M.J." */
  private static final Pattern STOPPED = Pattern.compile("\\b(\\p{L})[./](?=\\p{L}\\b)");

  private static final Pattern WITH = Pattern.compile("\\bw/");
  private static final Pattern BLANKS = Pattern.compile("\\s+");
  private static final Pattern STOPS = Pattern.compile("[.:*#,?]+");

  /** "width_in", as programs name their columns. */
  private static final Pattern UNIT_BEHIND_NAME =
      Pattern.compile("(?<=\\w)_(?:mm|cm|m|in|ft|psi|mpa|pct|f|c|sf|m2)$");

  private static final Pattern UNIT_BEHIND =
      Pattern.compile(
          ",\\s*(?:mm|in|psi|mpa|ft|m|%|in\\.|(?:milli)?(?:met(?:re|er)s?)|inch(?:es)?|feet|°?\\s?[cf]|deg\\.? ?[cf])\\s*$"
              + "|\\s(?:mm|cm|m|ft|psi|mpa|°\\s?[cf]|sf|sq\\.? ?ft|sqft|m2|sqm|sq\\.? ?m)\\.?$");
  private static final Pattern UNIT_OVER =
      Pattern.compile(
          "(?:,\\s*|\\s*[(\\[])(?:" + UnitWords.PATTERN + ")\\.?[)\\]]?\\s*$",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern BRACKETS =
      Pattern.compile("\\((?![^)]*\\b(?:wet|dry)\\b)[^)]*\\)|\\[[^\\]]*\\]");

  static final String SHORT = "short forms";

  /** Words of a name of a property. */
  private static final int MOST_WORDS = 4;

  private static final int SHORT_LOOK = "clear".length();

  private HeadingWords() {}

  /** The column of an attribute that these words would head, or null. */
  public static Header.Column named(Vocabulary vocabulary, String words) {
    Header.Column column = column(vocabulary, 0, "", words.trim());
    if (column.role() != Header.Role.OTHER)
      return column.role() == Header.Role.ATTRIBUTE ? column : null;
    List<Attribute> told = told(vocabulary, clean(vocabulary, words));
    if (told.size() != 1) return null;
    return new Header.Column(
        0, words.trim(), Header.Role.ATTRIBUTE, told.get(0), "", column.unit());
  }

  /** True of "Item", "Code" and other headings of a column of marks. */
  public static boolean isOfTags(Vocabulary vocabulary, String words) {
    return column(vocabulary, 0, "", words.trim()).role() == Header.Role.TAG;
  }

  /** True of the headings of an attribute, and of those of marks. */
  public static boolean namesColumn(Vocabulary vocabulary, String words) {
    Header.Role role = column(vocabulary, 0, "", words.trim()).role();
    return role == Header.Role.ATTRIBUTE || role == Header.Role.TAG;
  }

  /** True of "Material", "Covering" and other headings of what a tile is. */
  public static boolean isOfMaterial(Vocabulary vocabulary, String words) {
    return column(vocabulary, 0, "", words.trim()).role() == Header.Role.MATERIAL;
  }

  /**
   * "Ground: cement board on steel studs": the column that the value itself tells under a name that
   * is none of ours, or null.
   */
  public static Header.Column byValue(Vocabulary vocabulary, String name, String value) {
    if (BLANKS.split(name.trim()).length > MOST_WORDS || !vocabulary.family(name).isEmpty())
      return null;
    Attribute told = null;
    int longest = 0;
    for (Attribute a : vocabulary.attributes()) {
      // "Light: Translucent, pale"; "clear" alone may be of anything.
      boolean look = a.id().equals("tile.translucency");
      boolean may = a.kind() == Attribute.Kind.TERM && a.needsFamily();
      if (!look && (!may || Set.of("location", "tile").contains(a.family()))) continue;
      for (Phrases term : a.words().terms().values()) {
        Phrases.Hit hit = term.first(value);
        if (hit == null || hit.start() > 0 || hit.end() <= longest) continue;
        if (look && hit.end() <= SHORT_LOOK) continue;
        longest = hit.end();
        told = a;
      }
    }
    return told == null
        ? null
        : new Header.Column(0, name.trim(), Header.Role.ATTRIBUTE, told, "", null);
  }

  /** Attributes that the words, in any form and order, leave no doubt about. */
  private static List<Attribute> told(Vocabulary vocabulary, String words) {
    Map<String, HeadingEvidence.Heard> heard = vocabulary.headings().of(words);
    return vocabulary.attributes().stream()
        .filter(a -> heard.containsKey(a.id()))
        .filter(a -> heard.get(a.id()).strength() >= ColumnScores.EXACT)
        .toList();
  }

  /** The same where short forms are spelt out by their letters. */
  public static Header.Column column(Vocabulary vocabulary, int index, String top, String bottom) {
    List<String> cleaned = cleaned(vocabulary, top, bottom);
    Header.Column plain = plain(vocabulary, index, top, bottom, cleaned);
    if (plain.role() != Header.Role.OTHER) return plain;
    HeaderWords words = vocabulary.headerWords();
    String upper = top.isEmpty() ? "" : words.byLetters(clean(vocabulary, top));
    String lower = bottom.isEmpty() ? "" : words.byLetters(cleaned.get(cleaned.size() - 1));
    if ((upper + " " + lower).trim().equals(cleaned.get(0))) return plain;
    Header.Column c = plain(vocabulary, index, upper, lower, cleaned(vocabulary, upper, lower));
    if (c.role() == Header.Role.OTHER) return plain;
    Attribute fitted =
        c.attribute() == null ? null : fitting(vocabulary, c.attribute(), plain.unit());
    return new Header.Column(index, plain.text(), c.role(), fitted, c.surface(), plain.unit())
        .by(new Header.Evidence(SHORT, 1, 0, List.of()));
  }

  /** The whole heading, and the lowest part of it where there are several. */
  private static List<String> cleaned(Vocabulary vocabulary, String top, String bottom) {
    String full = clean(vocabulary, joined(top, bottom));
    return top.isEmpty() || bottom.isEmpty()
        ? List.of(full)
        : List.of(full, clean(vocabulary, bottom));
  }

  /**
   * @param cleaned the whole heading first
   */
  private static Header.Column plain(
      Vocabulary vocabulary, int index, String top, String bottom, List<String> cleaned) {
    String text = (top + " " + bottom).trim();
    String full = cleaned.get(0);
    Unit unit = Quantities.unitOfHeader(text);
    Taught.Word taught = vocabulary.taught().column(text, bottom);
    Attribute told = taught == null ? null : vocabulary.attribute(taught.meaning()).orElse(null);
    if (told != null)
      return new Header.Column(
          index, text, Header.Role.ATTRIBUTE, told, "", unit == null ? taught.unit() : unit);
    for (String candidate : cleaned) {
      Header.Column column = exact(vocabulary, index, text, candidate, unit);
      if (column != null) return column;
    }
    for (String candidate : cleaned) {
      Attribute loose = loose(vocabulary, candidate);
      if (loose != null) {
        return new Header.Column(
            index, text, Header.Role.ATTRIBUTE, fitting(vocabulary, loose, unit), "", unit);
      }
    }
    Attribute any = vocabulary.headerWords().inAnyOrder(full, vocabulary.list("schedule.filler"));
    if (any != null)
      return new Header.Column(
          index, text, Header.Role.ATTRIBUTE, fitting(vocabulary, any, unit), "", unit);
    Header.Column half = eitherHalf(vocabulary, index, text, full, unit);
    return half != null ? half : new Header.Column(index, text, Header.Role.OTHER, null, "", unit);
  }

  /** "Chip or tile size" is a size when either half of it is. */
  private static Header.Column eitherHalf(
      Vocabulary vocabulary, int index, String text, String name, Unit unit) {
    for (String half : name.split("\\s+(?:or|and)\\s+|\\s*[/&]\\s*")) {
      if (half.equals(name)) return null;
      Header.Column column = exact(vocabulary, index, text, half.trim(), unit);
      if (column != null && column.role() == Header.Role.ATTRIBUTE) return column;
    }
    return null;
  }

  private static Header.Column exact(
      Vocabulary vocabulary, int index, String text, String name, Unit unit) {
    for (Attribute a : vocabulary.mayHead(name)) {
      if (a.words().headers().matches(name))
        return new Header.Column(
            index, text, Header.Role.ATTRIBUTE, fitting(vocabulary, a, unit), "", unit);
    }
    if (vocabulary.list("schedule.tag").matches(name))
      return new Header.Column(index, text, Header.Role.TAG, null, "", unit);
    if (vocabulary.list("schedule.material").matches(name))
      return new Header.Column(index, text, Header.Role.MATERIAL, null, "", unit);
    for (Map.Entry<String, Phrases> surface : vocabulary.surfaceHeaders().entrySet()) {
      if (surface.getValue().matches(name))
        return new Header.Column(index, text, Header.Role.SURFACE, null, surface.getKey(), unit);
    }
    return null;
  }

  /** "Area" in square feet is no room, and "movement joint" in inches is a width, no guideline. */
  public static Attribute fitting(Vocabulary vocabulary, Attribute named, Unit unit) {
    boolean measured =
        named.kind() == Attribute.Kind.AMOUNT
            || named.kind() == Attribute.Kind.SIZE
            || named.kind() == Attribute.Kind.FLATNESS;
    if (unit == null || measured) return named;
    Attribute best = named;
    int count = 0;
    for (Attribute a : vocabulary.attributes()) {
      boolean fits =
          a.kind() == Attribute.Kind.AMOUNT
              && a.family().equals(named.family())
              && a.dimension() == unit.dimension();
      if (fits) count++;
      if (fits && (best == named || a.id().endsWith(".width"))) best = a;
    }
    // Of two strengths the unit tells neither.
    return count < 2 || best.id().endsWith(".width") ? best : named;
  }

  /** The attribute whose header phrase, with fillers, makes up the whole text. */
  private static Attribute loose(Vocabulary vocabulary, String name) {
    Attribute best = null;
    int longest = 3;
    for (Attribute a : vocabulary.mayHead(name)) {
      for (Phrases.Hit hit : a.words().headers().all(name)) {
        String rest = name.substring(0, hit.start()) + " " + name.substring(hit.end());
        int length = hit.end() - hit.start();
        boolean again = a.words().headers().matches(rest.trim());
        if (length > longest && (again || onlyFiller(vocabulary, rest))) {
          best = a;
          longest = length;
        }
      }
    }
    return best;
  }

  private static boolean onlyFiller(Vocabulary vocabulary, String rest) {
    for (String word : rest.trim().split("[\\s/-]+")) {
      if (!word.isEmpty() && !vocabulary.list("schedule.filler").matches(word)) return false;
    }
    return true;
  }

  /** The term of an attribute that a cell has with the word that it is headed by: "Class 50". */
  public static Optional<String> classed(Attribute a, String heading, String cell) {
    String headed = lastWord(heading) + " " + cell;
    String named = a.id().substring(a.id().indexOf('.') + 1) + " " + cell;
    return a.words().terms().entrySet().stream()
        .filter(e -> e.getValue().matches(headed) || e.getValue().matches(named))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** "Class" of "Sealant class (C920)". */
  static String lastWord(String heading) {
    String plain = BRACKETS.matcher(heading.toLowerCase(Locale.ROOT)).replaceAll(" ").trim();
    return plain.substring(plain.lastIndexOf(' ') + 1);
  }

  /** "Joint, mm" over "Width" is "Joint width"; a unit at the end is left to others. */
  static String joined(String top, String bottom) {
    return bottom.isEmpty()
        ? top.trim()
        : (UNIT_OVER.matcher(top).replaceFirst("") + " " + bottom).trim();
  }

  /** Lower case, short forms spelt out, without units, brackets, full stops and line breaks. */
  static String clean(Vocabulary vocabulary, String text) {
    String words = UNIT_BEHIND_NAME.matcher(text.toLowerCase(Locale.ROOT)).replaceFirst("");
    String out = STOPPED.matcher(words.replace('_', ' ')).replaceAll("$1");
    out = BRACKETS.matcher(WITH.matcher(out).replaceAll("with ")).replaceAll(" ");
    out = UNIT_BEHIND.matcher(out).replaceAll(" ");
    out = STOPS.matcher(out).replaceAll(" ");
    out = COUNTED.matcher(BLANKS.matcher(out).replaceAll(" ").trim()).replaceFirst("");
    String plain = vocabulary.inEnglish(out);
    return vocabulary.headerWords().spelt(plain);
  }

  /**
   * What the tests are of that a heading names: "Frost EN ISO 10545-12" heads the results of that
   * one. The standard of a product, as in "Adhesive to EN 12004", heads much else.
   */
  static List<String> tests(Vocabulary vocabulary, String heading) {
    String plain = PlainText.of(heading);
    List<Citations.Found> cited = Citations.find(plain);
    if (cited.isEmpty() || plain.substring(0, cited.get(0).start()).isBlank()) return List.of();
    return cited.stream()
        .flatMap(found -> vocabulary.standards().of(found.standard().designation()).stream())
        .filter(info -> info.states().size() == 1 && !info.states().get(0).endsWith(".standard"))
        .map(info -> info.states().get(0))
        .toList();
  }
}
