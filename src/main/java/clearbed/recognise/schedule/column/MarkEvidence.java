package clearbed.recognise.schedule.column;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.FigureSearch;
import clearbed.recognise.text.Numbers;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.UnitWords;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the figures of a column, a table or a document show of the mark before their decimals. */
public final class MarkEvidence {
  private static final Pattern NUMBER =
      Pattern.compile(FigureSearch.START + "(" + Numbers.PATTERN + ")", Pattern.CASE_INSENSITIVE);

  /** Units that no label of a clause is followed by; those of US custom take no comma. */
  private static final Pattern METRIC =
      Pattern.compile(
          "\\s?(?:(?:mm|cm|m|m2|m²|sqm|sq\\.? ?m|kg|MPa|kPa|N/mm2|N/mm²|days?|hours?)(?![\\p{L}\\d])|%|°\\s?C\\b)");

  private static final Pattern CUSTOMARY =
      Pattern.compile(
          "\\s?(?:\"|(?:psi|ft|feet|foot|inch|inches|sf|sq\\.? ?ft|mils?|lbs?)(?![\\p{L}\\d])|°\\s?F\\b)");

  /** Formats whose cells hold numbers, which the reader shows in the American way. */
  private static final Set<String> WITH_NUMBERS = Set.of("xlsx", "xls", "ods");

  /** Rows below a header that show how its figures are written. */
  private static final int LOOKED_AT = 200;

  private static final int MANY = 2;

  private static final Pattern STOP = Pattern.compile("(?<=[.;])\\s|\\n");

  /** Among so many figures of a document one that is written otherwise is a slip. */
  private static final int ODD_ONE = 8;

  private final boolean besideNumbers;
  private final boolean whole;

  /** "All lengths in mm", above the tables or anywhere else. */
  private final NotedUnits units = new NotedUnits();

  private int points;
  private int commas;

  /**
   * @param whole true for all that a document shows
   */
  private MarkEvidence(boolean besideNumbers, boolean whole) {
    this.besideNumbers = besideNumbers;
    this.whole = whole;
  }

  /** What a document notes of the units of its figures. */
  public NotedUnits units() {
    return units.copy();
  }

  /** What the figures with a metric unit show, wherever in a document they stand. */
  public static MarkEvidence of(Document document) {
    MarkEvidence evidence = new MarkEvidence(WITH_NUMBERS.contains(document.format()), true);
    for (Block block : document.blocks()) {
      if (block instanceof Paragraph p) {
        evidence.measured(p.text());
        if (NotedUnits.mayNote(p.text()))
          for (String sentence : STOP.split(p.text())) evidence.units.note(sentence.strip());
      }
      if (block instanceof Table t) {
        for (Table.Row row : t.rows()) {
          for (Table.Cell cell : row.cells()) evidence.measured(cell.text());
        }
      }
    }
    return evidence;
  }

  private void measured(String text) {
    if (!hasMark(text) || isBare(text)) return;
    String s = PlainText.of(text);
    Matcher m = NUMBER.matcher(s);
    while (m.find()) {
      boolean metric = METRIC.matcher(s).region(m.end(), s.length()).lookingAt();
      if (metric || CUSTOMARY.matcher(s).region(m.end(), s.length()).lookingAt())
        count(m.group(1), !metric);
    }
  }

  /**
   * Counts the figures of a cell.
   *
   * @param customary true when figures without a unit have a US customary one
   */
  private void add(String text, boolean customary) {
    if (!hasMark(text)) return;
    String s = PlainText.of(text);
    Matcher m = NUMBER.matcher(s);
    while (m.find()) {
      boolean metric = METRIC.matcher(s).region(m.end(), s.length()).lookingAt();
      boolean other = CUSTOMARY.matcher(s).region(m.end(), s.length()).lookingAt();
      count(m.group(1), other || customary && !metric);
    }
  }

  private void add(MarkEvidence other) {
    points += other.points;
    commas += other.commas;
  }

  /**
   * The header with what the figures under it show.
   *
   * @param rows of the grid, from the one behind the header on
   */
  public Header under(Header header, List<Table.Row> rows) {
    Map<Integer, MarkEvidence> columns = new HashMap<>();
    MarkEvidence table = new MarkEvidence(besideNumbers, false);
    for (Header.Column c : header.columns().values()) {
      if (!c.measures()) continue;
      MarkEvidence column = new MarkEvidence(besideNumbers, false);
      boolean customary = c.unit() != null && UnitWords.isCustomary(c.unit());
      for (Table.Row row : rows.subList(0, Math.min(rows.size(), LOOKED_AT))) {
        Table.Cell cell = row.at(c.index());
        if (cell != null) column.add(cell.text(), customary);
      }
      columns.put(c.index(), column);
      table.add(column);
    }
    Map<Integer, Header.Column> out = new LinkedHashMap<>(header.columns());
    out.replaceAll((index, c) -> c.with(columns.getOrDefault(index, table).within(table, this)));
    return new Header(out, header.rows());
  }

  private void count(String number, boolean customary) {
    switch (Numbers.shows(number)) {
      case POINT -> points++;
      case COMMA_BETWEEN_THOUSANDS -> points += MANY;
      case COMMA -> commas += customary ? 0 : 1;
      case POINT_BETWEEN_THOUSANDS -> commas += MANY;
      case NOTHING -> {}
    }
  }

  /** A digit, a mark and a digit: most texts have none. */
  private static boolean hasMark(String text) {
    for (int i = text.length() - 2; i > 0; i--) {
      char c = text.charAt(i);
      boolean mark = c == '.' || c == ',';
      if (mark && isDigit(text.charAt(i - 1)) && isDigit(text.charAt(i + 1))) return true;
    }
    return false;
  }

  /** Figures without a unit, as most cells of a bill of quantities. */
  private static boolean isBare(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (!isDigit(c) && c != '.' && c != ',' && c != ' ') return false;
    }
    return true;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private boolean showsNothing() {
    return points == 0 && commas == 0;
  }

  /**
   * The mark of figures here, as far as they show it themselves, else as those around them do. One
   * figure alone against all around it decides nothing.
   */
  private DecimalMark within(MarkEvidence table, MarkEvidence document) {
    MarkEvidence nearest = !showsNothing() ? this : !table.showsNothing() ? table : document;
    boolean alone = nearest.points + nearest.commas == 1;
    boolean contradicted =
        alone && (nearest.points > 0 ? document.commas > 0 : document.points > 0);
    return contradicted ? DecimalMark.MIXED : nearest.mark();
  }

  /** The mark that these figures show. */
  public DecimalMark mark() {
    int odd = Math.min(points, commas);
    boolean slip = whole && odd * ODD_ONE <= Math.max(points, commas);
    if (odd > 0 && !slip) return DecimalMark.MIXED;
    if (points > commas) return DecimalMark.POINT;
    if (commas == 0) return DecimalMark.UNKNOWN;
    if (besideNumbers) return DecimalMark.COMMA_BESIDE_NUMBERS;
    return commas < MANY ? DecimalMark.COMMA_ONCE : DecimalMark.COMMA;
  }
}
