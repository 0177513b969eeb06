package clearbed.mark;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * By what a findings workbook is known when its mark is gone or broken, as after it was saved by
 * another program: its hidden sheet, or the headings of its sheets.
 */
public final class FindingsSheets {
  /** Name of the hidden sheet. */
  public static final String LEDGER = "For the next issue";

  /** What earlier programs called it; it was taken for a part of the bookkeeping. */
  public static final String FORMER_LEDGER = "Ledger";

  /** First words of the hidden sheet. */
  public static final String LEDGER_NOTE =
      "Written by Clearbed for its next issue. Please leave this sheet as it is.";

  /** Title of the workbook, on its first sheet and over every page in print. */
  public static final String TITLE = "Findings on the glass tile documents";

  /** First words of the sheet of calculations, under its title. */
  public static final String CALCULATIONS = "Tinted numbers are inputs and may be changed;";

  /** Custom property of a workbook in which people may be at work. */
  public static final String PROPERTY = "ClearbedFindings";

  /** Rows further down are not looked at for headings. */
  public static final int DEEPEST_HEADING = 50;

  private static final Pattern BLANKS = Pattern.compile("\\s+");
  private static final int LONGEST_HEADING = 40;

  /**
   * The headings of a sheet, in lower case.
   *
   * @param certain which no register of somebody else has together
   * @param least how many of all are there after people took columns out
   */
  private record Headings(Set<String> certain, Set<String> all, int least) {
    boolean areAmong(Set<String> words) {
      return words.containsAll(certain) && all.stream().filter(words::contains).count() >= least;
    }
  }

  private static final List<Headings> SHEETS =
      List.of(
          new Headings(
              Set.of("what is wrong", "expected"),
              Set.of(
                  "id",
                  "level",
                  "state",
                  "tags",
                  "check",
                  "what is wrong",
                  "found",
                  "expected",
                  "place",
                  "question",
                  "words as written",
                  "suggested clause"),
              6),
          new Headings(
              Set.of("question", "suggested wording"),
              Set.of(
                  "no.",
                  "tags",
                  "question",
                  "place",
                  "suggested wording",
                  "status",
                  "asked of",
                  "date asked",
                  "due",
                  "answer",
                  "note"),
              6),
          new Headings(
              Set.of("taken for glass because of"),
              Set.of("tag", "taken for glass because of", "place"),
              3),
          new Headings(
              Set.of("place in it", "what became of it"),
              Set.of("file", "format", "status", "reason", "place in it", "what became of it"),
              4),
          new Headings(
              Set.of("what came of it", "open checks it may answer"),
              Set.of(
                  "place",
                  "what came of it",
                  "heading or words",
                  "taken for",
                  "open checks it may answer"),
              4),
          // As the sheet was headed before.
          new Headings(
              Set.of("what came of it", "could answer"),
              Set.of("place", "what came of it", "heading or words", "taken for", "could answer"),
              4),
          // Of a survey: its sheets, then its tables.
          same("projects that fail it", "share of all projects", "not understood in"),
          same("open errors", "places not understood", "files not read"),
          same("heading or words", "could answer", "project"),
          same("projects that fail it", "words that satisfied it", "one of them"),
          same("what_is_wrong", "expected", "suppressed_because"),
          same("open_errors", "places_not_understood", "rule_set_digest"),
          same("entry_place", "attribute", "as_written"),
          same("outcome", "could_answer", "samples"));

  private static Headings same(String... words) {
    return new Headings(Set.of(words), Set.of(words), words.length);
  }

  private FindingsSheets() {}

  /** True for the headings of a sheet that this program writes findings on. */
  public static boolean isHeading(List<String> cells) {
    if (cells.size() < 3) return false;
    Set<String> words = new HashSet<>();
    for (String cell : cells) {
      if (cell.length() > LONGEST_HEADING) continue;
      words.add(BLANKS.matcher(cell.strip()).replaceAll(" ").toLowerCase(Locale.ROOT));
    }
    return SHEETS.stream().anyMatch(sheet -> sheet.areAmong(words));
  }

  /**
   * True when the list of sheets and the names of the custom properties tell a findings workbook.
   *
   * @param workbook the part of the package that lists the sheets
   */
  static boolean areIn(String workbook, Set<String> properties) {
    if (!workbook.contains(LEDGER) && !workbook.contains(FORMER_LEDGER)) return false;
    Map<String, String> states = new HashMap<>();
    XmlElements.each(
        workbook,
        (element, attributes, text) -> {
          if (element.equals("sheet"))
            states.put(
                attributes.getOrDefault("name", ""), attributes.getOrDefault("state", "visible"));
        });
    String ledger = states.containsKey(LEDGER) ? LEDGER : FORMER_LEDGER;
    boolean hidden = states.getOrDefault(ledger, "visible").endsWith("idden");
    boolean both = states.containsKey("Findings") && states.containsKey("Questions");
    return hidden && (both || properties.contains(PROPERTY));
  }
}
