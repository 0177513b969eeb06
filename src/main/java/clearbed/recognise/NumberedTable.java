package clearbed.recognise;

import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.section.CountedNotes;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Notes or articles that an office sets as a table, or that a page shows as one: their marks in the
 * first column, their words in the second. They are running text.
 */
final class NumberedTable {
  /** {@code 1}, {@code 2.3}, {@code B}, {@code B4}, {@code N-04}. */
  private static final Pattern MARK =
      Pattern.compile("(?:[A-Z]{1,3}[-.]?)?\\d{0,2}(?:\\.\\d{1,2}){0,3}[.:)]?");

  private static final Pattern FIGURES = Pattern.compile("\\d{1,2}(?:\\.\\d{1,2}){0,3}[.:)]?");

  private static final Pattern SENTENCE = Pattern.compile("(?:\\S+\\s+){4}.*[.;:]", Pattern.DOTALL);

  /** Fewer rows might be anything. */
  private static final int FEWEST = 5;

  private NumberedTable() {}

  /** Its notes, as paragraphs that have their marks; empty where it is no such table. */
  static List<Paragraph> notes(Table table, CountedNotes counted) {
    List<Paragraph> typed = new ArrayList<>();
    int marked = 0;
    int sentences = 0;
    boolean figures = true;
    for (Table.Row row : table.rows()) {
      List<Table.Cell> filled = row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
      if (filled.size() > 2) return List.of();
      if (filled.isEmpty()) continue;
      String mark = filled.get(0).text().strip();
      boolean hasMark = filled.size() == 2 && MARK.matcher(mark).matches();
      if (filled.size() == 2 && !hasMark) return List.of();
      String words = filled.get(filled.size() - 1).text().strip();
      if (hasMark) {
        marked++;
        if (SENTENCE.matcher(words).matches()) sentences++;
        figures &= FIGURES.matcher(mark).matches();
      }
      String text = hasMark ? mark + " " + words : words;
      typed.add(Paragraph.body(table.origin(filled.get(0)).withText(text), text));
      for (Table.Cell cell : row.cells()) Paragraph.remark(table, cell).ifPresent(typed::add);
    }
    if (marked < FEWEST || sentences * 2 < marked) return List.of();
    if (figures) return typed;
    List<Paragraph> notes = counted.of(typed);
    long labelled = notes.stream().filter(p -> !p.label().isBlank()).count();
    return labelled * 3 >= marked * 2L ? notes : List.of();
  }
}
