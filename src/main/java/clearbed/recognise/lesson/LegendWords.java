package clearbed.recognise.lesson;

import clearbed.model.document.Table;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import clearbed.recognise.vocabulary.taught.Lessons.Explained;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The short forms that an office explains itself: {@code OP = opaque; TL = translucent} below a
 * schedule, or a legend whose row {@code SEE} says {@code See-through: OP opaque, TL translucent}.
 * Columns are headed and cells filled with them.
 */
final class LegendWords {
  private static final String FORM = "\\p{Lu}[\\p{L}&']{0,5}(?:[-/]\\p{Lu}{1,4})?";

  private static final Pattern SHORT_FORM = Pattern.compile("(?:" + FORM + ")(?: \\p{Lu})?");

  /** "TL = translucent". */
  private static final Pattern EQUATED =
      Pattern.compile(
          "(?<![\\p{L}\\d.-])("
              + FORM
              + ")\\s*=\\s*(\\p{L}[^;,=|\\n]{2,59}?)(?=\\.?\\s*(?:[;,\\n]|\\.\\s|$))");

  /** "OP opaque". */
  private static final Pattern LISTED =
      Pattern.compile("(\\p{Lu}{2,6}(?:[-/]\\p{Lu}{1,4})?)\\s+(\\p{Ll}.{2,58}?)\\.?");

  /** "Mounting: PF paper on the face; MB mesh on the back": what the letters are about. */
  private static final Pattern LABEL =
      Pattern.compile("\\s*(\\p{L}[^:;,=\\d]{2,40}):\\s+.*", Pattern.DOTALL);

  /** "Grout K is CG2WA, cementitious": a letter that stands for a product. */
  private static final Pattern LETTERED =
      Pattern.compile(
          "(?<!\\p{L})(\\p{L}{4,20})\\s+(\\p{Lu})\\s*(?:\\bis\\b|=|:|[\u2013\u2014])\\s*((?:[^;.\\n]|\\.(?=\\d)){3,160})");

  private static final Pattern LETTER = Pattern.compile("\\p{Lu}");

  /** Fewer might be words of any kind. */
  private static final int FEWEST = 2;

  /** Pairs stand beside each other in so many cells. */
  private static final int MOST_CELLS = 8;

  /** Longer words explain no letters, in characters. */
  private static final int LONGEST_MEANING = 60;

  private final Vocabulary vocabulary;

  LegendWords(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** Adds what one cell or paragraph explains. */
  void into(String text, List<Explained> out) {
    String plain = PlainText.of(text);
    Matcher lettered = LETTERED.matcher(plain);
    while (lettered.find()) {
      String family = vocabulary.family(lettered.group(1));
      // What they say is read where they are described.
      if (WorkFamilies.PARTS.contains(family))
        out.add(new Explained(lettered.group(2), lettered.group(3).strip(), false, family));
    }
    if (text.indexOf('=') < 0 && text.indexOf(':') < 0) return;
    Matcher equated = EQUATED.matcher(plain);
    while (equated.find()) add(equated.group(1), equated.group(2), out);
    if (LABEL.matcher(plain).matches()) listed(plain.substring(plain.indexOf(':') + 1), out);
  }

  /**
   * What a table explains.
   *
   * @param rows that say nothing else
   */
  record Legend(List<Explained> words, List<Table.Row> rows) {}

  /** A table of two columns or of pairs of such, the first of each short forms and no marks. */
  Legend in(Table table) {
    Legend out = new Legend(new ArrayList<>(), new ArrayList<>());
    List<Table.Row> block = new ArrayList<>();
    for (Table.Row row : table.rows()) {
      List<Table.Cell> filled = filled(row);
      if (filled.isEmpty()) continue;
      // On one sheet a legend stands apart from the schedule.
      boolean gap = !block.isEmpty() && block.get(block.size() - 1).number() + 1 < row.number();
      if (table.sheet() && gap) {
        legend(block, out);
        block.clear();
      }
      block.add(row);
    }
    legend(block, out);
    return out;
  }

  private static List<Table.Cell> filled(Table.Row row) {
    return row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
  }

  private void legend(List<Table.Row> rows, Legend out) {
    List<Explained> found = new ArrayList<>();
    List<Table.Row> told = new ArrayList<>();
    int pairs = 0;
    int forms = 0;
    boolean wide = false;
    for (Table.Row row : rows) {
      List<Table.Cell> filled = filled(row);
      if (filled.size() < FEWEST) continue;
      if (filled.size() > MOST_CELLS || filled.size() % FEWEST != 0) return;
      wide |= filled.size() > FEWEST;
      int before = found.size();
      boolean title = pairs == 0 && heads(filled);
      for (int i = 0; i < filled.size(); i += FEWEST) {
        String form = PlainText.line(filled.get(i).text()).strip();
        String meaning = PlainText.line(filled.get(i + 1).text()).strip();
        // "SYM | DESCRIPTION" heads them.
        boolean heads = pairs++ == 0 && meaning.indexOf(' ') < 0;
        if (heads || !SHORT_FORM.matcher(form).matches() || isName(form)) continue;
        forms++;
        Matcher label = LABEL.matcher(meaning);
        if (label.matches()) found.add(new Explained(form, label.group(1).strip(), true, ""));
        else add(form, meaning, found);
      }
      if (title || found.size() > before) told.add(row);
    }
    boolean legend = forms >= FEWEST && forms * 2 > pairs;
    // Beside each other nearly all are short forms, or it is a table of another kind.
    if (!legend || wide && forms * 4 < pairs * 3) return;
    out.words().addAll(found);
    out.rows().addAll(told);
  }

  /** "Size | 1 x 1 in." is of a card: what is known as a heading is short for nothing. */
  private boolean isName(String form) {
    return !isCapitals(form)
        && vocabulary.attributes().stream().anyMatch(a -> a.words().headers().matches(form));
  }

  private static boolean isCapitals(String form) {
    return form.equals(form.toUpperCase(Locale.ROOT));
  }

  /** "Abbrev. | Meaning". */
  private static boolean heads(List<Table.Cell> filled) {
    return filled.stream()
        .allMatch(c -> PlainText.line(c.text()).strip().split("\\s+").length <= FEWEST);
  }

  /** "Letter | Adhesive | Class": what each letter stands for below headings of that work. */
  void lettered(Table table, List<Explained> out) {
    if (table.rows().size() <= FEWEST) return;
    String headings = words(table.rows().get(0), 0);
    String family = vocabulary.family(headings);
    if (!WorkFamilies.PARTS.contains(family)) return;
    List<Explained> found = new ArrayList<>();
    for (Table.Row row : table.rows().subList(1, table.rows().size())) {
      Table.Cell first = row.at(0);
      String letter = first == null ? "" : PlainText.line(first.text()).strip();
      if (!LETTER.matcher(letter).matches()) return;
      found.add(new Explained(letter, words(row, 1), false, family));
    }
    if (found.stream().map(Explained::form).distinct().count() == found.size()) out.addAll(found);
  }

  private static String words(Table.Row row, int from) {
    return row.cells().stream()
        .filter(c -> c.column() >= from && c.hasOwnWords())
        .map(c -> PlainText.line(c.text()).strip())
        .collect(Collectors.joining(", "));
  }

  /** What is set apart by semicolons may have commas within. */
  private void listed(String text, List<Explained> out) {
    List<Explained> found = new ArrayList<>();
    int pairs = 0;
    for (String part : text.split(text.indexOf(';') < 0 ? "," : ";")) {
      Matcher m = LISTED.matcher(part.strip());
      if (!m.matches()) continue;
      pairs++;
      add(m.group(1), m.group(2), found);
    }
    if (pairs >= FEWEST) out.addAll(found);
  }

  /** As a heading, and as a cell. */
  private void add(String form, String meaning, List<Explained> out) {
    boolean mark = TagFinder.firstTags(form) != null;
    if (mark || meaning.length() > LONGEST_MEANING) return;
    out.add(new Explained(form, meaning.strip(), true, ""));
    String family = vocabulary.family(meaning);
    // One letter stands for a product only where its part of the work is spoken of.
    boolean letter = form.length() == 1 && WorkFamilies.PARTS.contains(family);
    if (isCapitals(form))
      out.add(new Explained(form, meaning.strip(), false, letter ? family : ""));
  }
}
