package clearbed.recognise.section.outline;

import clearbed.model.document.Paragraph;
import clearbed.recognise.statement.code.ClauseNumbers;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What looks like the mark of a tile and is none: codes of work sections, such as {@code M41},
 * known by the clauses that are numbered below them ({@code M41/110}), and numbers of cards or
 * sheets, known by titles that have the mark of a tile behind them ({@code Card C-1 GT-1 Mosaic}).
 *
 * @param codes as written
 * @param papers letters that cards are numbered under
 */
public record OtherMarks(SortedSet<String> codes, Set<String> papers) {
  private static final Pattern CLAUSE = Pattern.compile("^(" + ClauseNumbers.CODED + ")(?:\\s|$)");

  private static final Pattern TITLE = Pattern.compile("^([A-Z]\\d{2})[\\s:.-]+\\p{Lu}.{2,70}");

  private static final Pattern CARD =
      Pattern.compile(
          "^(?:\\p{Lu}\\p{L}+ ){1,2}([A-Z]{1,3}-?)\\d{1,2}[A-Z]?[\\s,:-]+(?!(?:and|to|or)\\b)([A-Z]{1,4}-?)\\d{1,3}[A-Z]?\\b.{0,80}$");

  /** So many titles of cards count. */
  private static final int FEWEST_CARDS = 2;

  /** Fewer clauses below a code might be anything. */
  private static final int FEWEST = 3;

  public static OtherMarks of(List<Paragraph> paragraphs) {
    SortedSet<String> codes = new TreeSet<>();
    int clauses = 0;
    Map<String, Set<String>> cards = new TreeMap<>();
    for (Paragraph p : paragraphs) {
      Matcher card = CARD.matcher(p.text().strip());
      if (card.matches() && !card.group(1).equals(card.group(2)))
        cards.computeIfAbsent(card.group(1), any -> new TreeSet<>()).add(p.text());
      Matcher m = CLAUSE.matcher((p.label() + " " + p.text()).strip());
      if (!m.lookingAt()) continue;
      codes.add(ClauseNumbers.code(m.group(1)));
      clauses++;
    }
    cards.values().removeIf(titles -> titles.size() < FEWEST_CARDS);
    Set<String> papers =
        cards.keySet().stream().map(p -> p.replace("-", "")).collect(Collectors.toSet());
    return new OtherMarks(clauses < FEWEST ? new TreeSet<>() : codes, papers);
  }

  /** "W41 GLASS TILING". */
  public boolean entitle(String text) {
    Matcher m = TITLE.matcher(text);
    return m.matches() && codes.contains(m.group(1));
  }

  /** True for a code, and for those between the first and the last of them. */
  private boolean has(String key) {
    if (papers.contains(Tags.prefix(key))) return true;
    if (codes.isEmpty()) return false;
    String code = key.replace("-", "");
    return code.length() == codes.first().length()
        && code.charAt(0) == codes.first().charAt(0)
        && code.compareTo(codes.first()) >= 0
        && code.compareTo(codes.last()) <= 0;
  }

  private boolean areNone() {
    return codes.isEmpty() && papers.isEmpty();
  }

  Limits outOf(Limits limits) {
    Set<String> kept = outOf(limits.tags());
    if (kept.size() == limits.tags().size()) return limits;
    return kept.isEmpty() ? limits.ofNoMark() : limits.withTags(kept);
  }

  public Statement outOf(Statement s) {
    Limits limits = outOf(s.limits());
    return limits == s.limits() ? s : s.withLimits(limits);
  }

  Set<String> outOf(Set<String> tags) {
    if (areNone() || tags.isEmpty()) return tags;
    return tags.stream().filter(tag -> !has(Tags.key(tag))).collect(Collectors.toSet());
  }

  public List<String> outOf(List<String> tags) {
    return tags.stream().filter(tag -> !has(Tags.key(tag))).toList();
  }

  Wordings.Wording outOf(Wordings.Wording w) {
    if (areNone()) return w;
    Limits limits = outOf(w.limits());
    List<String> subjects = outOf(w.subjects());
    boolean same = limits == w.limits() && subjects.size() == w.subjects().size();
    if (same) return w;
    return new Wordings.Wording(
        w.part(),
        w.label(),
        w.rank(),
        w.heading(),
        w.lead(),
        limits,
        w.family(),
        subjects,
        w.subjectGlass() && !subjects.isEmpty(),
        w.tagged() && !(limits.tags().isEmpty() && subjects.isEmpty()),
        w.glassTile(),
        w.tileWork(),
        w.works());
  }
}
