package clearbed.recognise.section.outline;

import clearbed.base.Memo;
import clearbed.model.document.Paragraph;
import clearbed.recognise.section.clause.SubjectFinder;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.LimitFinder;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.part.Parts;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Reads paragraphs by themselves, before it is known what they stand under. */
public final class Wordings {

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
   * @param subjectGlass true when it opens with tags and says that they are glass tile
   * @param tagged true when it names tags
   * @param glassTile true when it can stand over others and opens with words on glass tile
   * @param tileWork true when it speaks of tile or its grout
   * @param works attributes of the work that it names, when it is short enough for a title
   */
  public record Wording(
      int part,
      Outline.Label label,
      int rank,
      boolean heading,
      String lead,
      Limits limits,
      String family,
      List<String> subjects,
      boolean subjectGlass,
      boolean tagged,
      boolean glassTile,
      boolean tileWork,
      Set<String> works) {
    String words() {
      return label.rest();
    }
  }

  private record LineKey(String label, int headingLevel, String text) {}

  private static final Pattern PART =
      Pattern.compile("^PART\\s+(\\d|I{1,3})\\b.*", Pattern.CASE_INSENSITIVE);
  private static final Pattern TAG_WITH_PLACE =
      Pattern.compile("^(" + Tags.MARK + "),? (?:at|in|on|for) .*$");

  /** Attributes of work that the title of an article requires of what stands under it. */
  public static final List<String> TITLED_WORKS = List.of("process.mockup", "process.submittals");

  private static final int LONGEST_TITLE = 70;

  /** "L/480", the only thing that is said of structures alone. */
  private static final Pattern DEFLECTION = Pattern.compile("\\bL ?/ ?\\d{3}\\b");

  /** Over bullets alone. */
  static final int LEAD_IN_RANK = 79;

  static final int TEXT_RANK = 90;

  private final Vocabulary vocabulary;
  private final StatementFinder finder;
  private final LimitFinder limitFinder;
  private final Leads leads;
  private final SubjectFinder subjectFinder;
  private final List<Attribute> titledWorks;
  private final Memo<LineKey, Wording> known = new Memo<>(LineKey::text);

  public Wordings(Vocabulary vocabulary, StatementFinder finder, LimitFinder limitFinder) {
    this.vocabulary = vocabulary;
    this.finder = finder;
    this.limitFinder = limitFinder;
    this.leads = new Leads(vocabulary);
    this.subjectFinder = new SubjectFinder(vocabulary);
    this.titledWorks =
        TITLED_WORKS.stream().flatMap(id -> vocabulary.attribute(id).stream()).toList();
  }

  /** True for {@code PART 2 - PRODUCTS}. */
  public static boolean opensPart(String text) {
    return PART.matcher(text).matches();
  }

  /**
   * @param text the paragraph's in plain form
   */
  Wording of(Paragraph p, String text) {
    LineKey key = new LineKey(p.label().trim(), p.headingLevel(), text);
    return known.get(key, () -> read(p, text));
  }

  private Wording read(Paragraph p, String text) {
    Outline.Label label =
        opensWithMark(p, text) ? new Outline.Label(-1, "", text) : Outline.label(p, text);
    String words = label.rest();
    String scope = label.rank() < 0 ? leads.scope(words) : "";
    boolean heading = !scope.isEmpty() || Outline.heading(p, label);
    int rank =
        label.rank() >= 0
            ? label.rank()
            : heading
                ? Math.min(1, Math.max(0, p.headingLevel() - 1))
                : words.endsWith(":") ? LEAD_IN_RANK : TEXT_RANK;
    String lead = !scope.isEmpty() ? scope : heading ? words : leads.of(words);
    String title = heading || !lead.isEmpty() ? "" : leads.runIn(words);
    // "GT-3, at shower walls and base:" is about the tile, not about bases.
    String subject = TAG_WITH_PLACE.matcher(lead).replaceFirst("$1");
    boolean above = heading || !label.number().isEmpty();
    List<String> subjects = subjectFinder.named(words, heading);
    return new Wording(
        part((p.label().trim() + " " + text).trim()),
        label,
        rank,
        heading,
        lead,
        title.isEmpty() ? limits(lead, words) : limitFinder.of(title, true).anywhere(),
        vocabulary.family(title.isEmpty() ? subject : title),
        subjects,
        !subjects.isEmpty() && subjectFinder.of(words, subjects, List.of(), List.of()).glass(),
        limitFinder.namesTags(words),
        above && vocabulary.glass().speaksOfTile(Outline.shorten(words)),
        TileWords.tileWork(words),
        words.length() < LONGEST_TITLE ? works(words) : Set.of());
  }

  /** "M4.1 Sintered glass" is no article where the schedules have M4.1. */
  private boolean opensWithMark(Paragraph p, String text) {
    return p.label().isBlank()
        && vocabulary.taught().tagsIn(text).stream().anyMatch(hit -> hit.start() == 0);
  }

  /** Of "GT-1: 8 ft. GT-2: 16 ft. All: at perimeters" no lead limits the whole. */
  private Limits limits(String lead, String words) {
    Limits limits = limitFinder.ofLead(lead);
    if (words.equals(lead)) return limits;
    if (DEFLECTION.matcher(words).find() && limitFinder.listsStructures(lead))
      return limits.anywhere();
    // "Walls: silicone ... Floors: polyurethane ...": each lead limits what follows it.
    boolean placed =
        !limits.surfaces().isEmpty() || !limits.exposures().isEmpty() || !limits.except().isEmpty();
    if (limits.tags().isEmpty() && placed && placesAgain(limits, lead, words)) return Limits.NONE;
    if (exceptedAgain(limits, lead, words)) return Limits.NONE;
    if (limits.tags().isEmpty()) return limits;
    List<String> leads =
        Sentences.of(words).stream().map(sentence -> Parts.lead(sentence.text())).toList();
    // "Evenness of GT-1 and GT-2: ... For GT-3: ... Deflection: ..."
    boolean others =
        leads.stream()
            .map(other -> limitFinder.of(other, true).tags())
            .anyMatch(tags -> !tags.isEmpty() && Collections.disjoint(tags, limits.tags()));
    if (others && !vocabulary.family(lead).isEmpty()) return Limits.NONE;
    boolean all =
        leads.stream()
            .anyMatch(
                other ->
                    vocabulary.list("clause.everyOne").matches(other.toLowerCase(Locale.ROOT)));
    return all ? Limits.NONE : limits;
  }

  /** "Mortar for all but GT-4: ... Mortar for GT-4: ...": the rest speaks of what was left out. */
  private boolean exceptedAgain(Limits first, String lead, String words) {
    if (first.except().isEmpty()) return false;
    Set<String> named =
        limitFinder.of(words.substring(Math.min(lead.length(), words.length())), false).tags();
    if (!Collections.disjoint(first.except().tags(), named)) return true;
    return Sentences.of(words).stream()
        .map(sentence -> Parts.lead(sentence.text()))
        .filter(other -> !other.isEmpty() && !other.equals(lead))
        .map(limitFinder::ofLead)
        .anyMatch(
            its ->
                !Collections.disjoint(first.except().tags(), its.tags())
                    || !Collections.disjoint(first.except().terms(), its.surfaces())
                    || !Collections.disjoint(first.except().places(), its.exposures()));
  }

  private boolean placesAgain(Limits first, String lead, String words) {
    for (Sentences.Sentence sentence : Sentences.of(words)) {
      String other = Parts.lead(sentence.text());
      if (other.isEmpty() || other.equals(lead)) continue;
      Limits its = limitFinder.ofLead(other);
      boolean placed = !its.surfaces().isEmpty() || !its.exposures().isEmpty();
      boolean differs =
          !its.surfaces().equals(first.surfaces()) || !its.exposures().equals(first.exposures());
      if (placed && differs) return true;
    }
    return false;
  }

  private static int part(String text) {
    Matcher m = PART.matcher(text);
    if (!m.matches()) return 0;
    String number = m.group(1);
    return "123".contains(number) ? Integer.parseInt(number) : number.length();
  }

  private Set<String> works(String title) {
    return titledWorks.stream()
        .filter(work -> work.words().cues().in(title))
        .map(Attribute::id)
        .collect(Collectors.toUnmodifiableSet());
  }
}
