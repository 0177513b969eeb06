package clearbed.recognise.section;

import clearbed.model.Paragraph;
import clearbed.recognise.statement.Limits;
import clearbed.recognise.statement.Statement;
import clearbed.recognise.statement.Tags;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Codes of work sections, such as {@code M41}, known by the clauses that are numbered below them
 * ({@code M41/110}): they mark no tile.
 *
 * @param codes as written
 */
record SectionCodes(SortedSet<String> codes) {
  private static final Pattern CLAUSE = Pattern.compile("^([A-Z]\\d{2})/\\d{3}[A-Z]?(?:\\s|$)");

  private static final Pattern TITLE = Pattern.compile("^([A-Z]\\d{2})[\\s:.-]+\\p{Lu}.{2,70}");

  /** Fewer clauses below a code might be anything. */
  private static final int FEWEST = 3;

  static SectionCodes of(List<Paragraph> paragraphs) {
    SortedSet<String> codes = new TreeSet<>();
    int clauses = 0;
    for (Paragraph p : paragraphs) {
      Matcher m = CLAUSE.matcher((p.label() + " " + p.text()).strip());
      if (!m.lookingAt()) continue;
      codes.add(m.group(1));
      clauses++;
    }
    return new SectionCodes(clauses < FEWEST ? new TreeSet<>() : codes);
  }

  /** "W41 GLASS TILING". */
  boolean entitle(String text) {
    Matcher m = TITLE.matcher(text);
    return m.matches() && codes.contains(m.group(1));
  }

  /** True for a code, and for those between the first and the last of them. */
  private boolean has(String key) {
    if (codes.isEmpty()) return false;
    String code = key.replace("-", "");
    return code.length() == codes.first().length()
        && code.charAt(0) == codes.first().charAt(0)
        && code.compareTo(codes.first()) >= 0
        && code.compareTo(codes.last()) <= 0;
  }

  Limits outOf(Limits limits) {
    Set<String> kept = outOf(limits.tags());
    if (kept.size() == limits.tags().size()) return limits;
    return kept.isEmpty() ? limits.ofNoMark() : limits.withTags(kept);
  }

  Statement outOf(Statement s) {
    Limits limits = outOf(s.limits());
    return limits == s.limits() ? s : s.withLimits(limits);
  }

  Set<String> outOf(Set<String> tags) {
    if (codes.isEmpty() || tags.isEmpty()) return tags;
    return tags.stream().filter(tag -> !has(Tags.key(tag))).collect(Collectors.toSet());
  }

  List<String> outOf(List<String> tags) {
    return tags.stream().filter(tag -> !has(Tags.key(tag))).toList();
  }

  Wordings.Wording outOf(Wordings.Wording w) {
    if (codes.isEmpty()) return w;
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
