package clearbed.recognise.section;

import clearbed.base.Memo;
import clearbed.model.Paragraph;
import clearbed.recognise.statement.LimitFinder;
import clearbed.recognise.statement.Limits;
import clearbed.recognise.statement.Parts;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.Tags;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Reads paragraphs by themselves, before it is known what they stand under. */
final class Wordings {

  /**
   * What a paragraph says wherever it stands.
   *
   * @param part number of the part of a section that it opens, else 0
   * @param rank in the outline; what stands under it has a greater one
   * @param heading a title rather than a requirement
   * @param lead the words that name the subject of what follows, or empty
   * @param limits of the lead
   * @param family part of the work that the lead speaks of, or empty
   * @param subjects tags that it opens with, as written
   * @param tagged true when it names tags
   * @param glassTile true when it can stand over others and opens with words on glass tile
   * @param tileWork true when it speaks of tile or its grout
   * @param works attributes of the work that it names, when it is short enough for a title
   */
  record Wording(
      int part,
      Outline.Label label,
      int rank,
      boolean heading,
      String lead,
      Limits limits,
      String family,
      List<String> subjects,
      boolean tagged,
      boolean glassTile,
      boolean tileWork,
      Set<String> works) {
    String words() {
      return label.rest();
    }
  }

  private record Key(String label, int headingLevel, String text) {}

  private static final Pattern PART =
      Pattern.compile("^PART\\s+(\\d|I{1,3})\\b.*", Pattern.CASE_INSENSITIVE);
  private static final Pattern TAG_WITH_PLACE =
      Pattern.compile("^(" + Tags.MARK + "),? (?:at|in|on|for) .*$");
  private static final Pattern HUNG = Pattern.compile("\\s+(?=[A-Z][a-z]|\\d)");
  private static final Pattern EXCEPT = Pattern.compile("(?i)^except[^,]*,\\s*");

  /** Attributes of work that the title of an article requires of what stands under it. */
  static final List<String> TITLED_WORKS = List.of("process.mockup", "process.submittals");

  private static final int LONGEST_TITLE = 70;
  private static final int LONGEST_LEAD = 60;

  /** Over bullets alone. */
  static final int LEAD_IN_RANK = 79;

  static final int TEXT_RANK = 90;

  private final Vocabulary vocabulary;
  private final StatementFinder finder;
  private final LimitFinder limitFinder;
  private final SubjectFinder subjectFinder;
  private final List<Attribute> titledWorks;
  private final Memo<Key, Wording> known = new Memo<>(Key::text);

  Wordings(Vocabulary vocabulary, StatementFinder finder, LimitFinder limitFinder) {
    this.vocabulary = vocabulary;
    this.finder = finder;
    this.limitFinder = limitFinder;
    this.subjectFinder = new SubjectFinder(vocabulary);
    this.titledWorks =
        TITLED_WORKS.stream().flatMap(id -> vocabulary.attribute(id).stream()).toList();
  }

  /** True for {@code PART 2 - PRODUCTS}. */
  static boolean opensPart(String text) {
    return PART.matcher(text).matches();
  }

  /**
   * @param text the paragraph's in plain form
   */
  Wording of(Paragraph p, String text) {
    Key key = new Key(p.label().trim(), p.headingLevel(), text);
    return known.get(key, () -> read(p, text));
  }

  private Wording read(Paragraph p, String text) {
    Outline.Label label = Outline.label(p, text);
    String words = label.rest();
    boolean heading = Outline.heading(p, label);
    int rank =
        label.rank() >= 0
            ? label.rank()
            : heading
                ? Math.min(1, Math.max(0, p.headingLevel() - 1))
                : words.endsWith(":") ? LEAD_IN_RANK : TEXT_RANK;
    String lead = heading ? words : lead(words);
    // "GT-3, at shower walls and base:" is about the tile, not about bases.
    String subject = TAG_WITH_PLACE.matcher(lead).replaceFirst("$1");
    boolean above = heading || !label.number().isEmpty();
    return new Wording(
        part((p.label().trim() + " " + text).trim()),
        label,
        rank,
        heading,
        lead,
        limitFinder.of(lead, true),
        lead.isEmpty() ? "" : vocabulary.family(subject),
        subjectFinder.named(words, heading),
        limitFinder.namesTags(words),
        above && vocabulary.speaksOfGlassTile(Outline.shorten(words)),
        TileWords.tileWork(words),
        words.length() < LONGEST_TITLE ? works(words) : Set.of());
  }

  private static int part(String text) {
    Matcher m = PART.matcher(text);
    if (!m.matches()) return 0;
    String number = m.group(1);
    return "123".contains(number) ? Integer.parseInt(number) : number.length();
  }

  /**
   * A paragraph that introduces others names its subject before the colon, or as a whole when
   * short.
   */
  private static String lead(String words) {
    String lead = Parts.lead(words);
    if (lead.isEmpty()) lead = hangingTags(words);
    // "Except at pools, mortar: ..." is about mortar, not about pools.
    if (!lead.isEmpty()) return EXCEPT.matcher(lead).replaceFirst("");
    return words.length() <= LONGEST_LEAD && !words.endsWith(".") ? words : "";
  }

  /** "GT-2 Foyer wall, dry. Fused glass tile ...": a mark in the margin, and behind it the text. */
  private static String hangingTags(String words) {
    boolean capitals = words.equals(words.toUpperCase(Locale.ROOT));
    LimitFinder.TagsAt tags = capitals ? null : LimitFinder.firstTags(words);
    if (tags == null || tags.start() > 0) return "";
    return HUNG.matcher(words).region(tags.end(), words.length()).lookingAt()
        ? words.substring(0, tags.end())
        : "";
  }

  private Set<String> works(String title) {
    return titledWorks.stream()
        .filter(work -> work.words().cues().in(title))
        .map(Attribute::id)
        .collect(Collectors.toUnmodifiableSet());
  }
}
