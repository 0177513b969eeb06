package clearbed.recognise;

import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.model.report.Fate;
import clearbed.recognise.lesson.LessonFinder;
import clearbed.recognise.schedule.grid.CalledCodes;
import clearbed.recognise.schedule.grid.RepeatingBlanks;
import clearbed.recognise.schedule.row.RoomUse;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.OutlineParser;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.section.outline.Outline;
import clearbed.recognise.statement.Accounting;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/** What has been recognised of a document so far, and what stands over what comes next. */
final class Collected {
  private static final int LONGEST_TITLE = 70;
  final List<ScheduleRow> rows = new ArrayList<>();
  final List<RoomUse> rooms = new ArrayList<>();
  final List<Section> sections = new ArrayList<>();
  final List<Paragraph> paragraphs = new ArrayList<>();
  final Accounting accounting;
  final List<Document.Gap> gaps;
  final SheetScopes scopes = new SheetScopes();

  /** Tables that are cards, under the title that names the tile. */
  final Map<Table, Table> underTitles = new IdentityHashMap<>();

  final CalledCodes codes;
  final boolean blanksRepeat;
  private final Document document;
  private final Vocabulary vocabulary;
  private final LessonFinder lessons;
  private final OutlineParser outline;

  /** Told when the first table asks what stands over it; null before. */
  private RepeatedLines repeated;

  /** The last heading among the paragraphs looked at so far: each is looked at once. */
  private String heading = "";

  private int lookedAt;

  /** The words of the last paragraph that may stand over what follows it. */
  private String last = "";

  /**
   * @param accounting how each sentence and cell ends
   */
  Collected(
      Document document,
      Accounting accounting,
      Vocabulary vocabulary,
      LessonFinder lessons,
      OutlineParser outline) {
    this.vocabulary = vocabulary;
    this.lessons = lessons;
    this.outline = outline;
    this.accounting = accounting;
    gaps = new ArrayList<>(document.gaps());
    this.document = document;
    codes = CalledCodes.of(document);
    blanksRepeat = RepeatingBlanks.areIn(document, vocabulary);
  }

  /** The table without the rows of a legend: they speak of the cells that have their letters. */
  Table unexplained(Table t) {
    List<Table.Row> legend = lessons.explained(t);
    if (legend.isEmpty()) return t;
    // Read as the other rows are that are no schedule's: as words.
    for (Table.Row row : legend)
      for (Table.Cell cell : row.cells())
        if (cell.hasOwnWords()) accounting.sentence(t.origin(cell), cell.text(), Fate.CONTEXT, "");
    return t.withRows(t.rows().stream().filter(row -> !legend.contains(row)).toList());
  }

  /** A line that was the title of a card heads nothing below the card, unless it is a heading. */
  void titled(String over, List<Paragraph> running) {
    if (over.isEmpty() || running.isEmpty()) return;
    Paragraph title = running.get(running.size() - 1);
    boolean line =
        title.headingLevel() == 0 && title.label().isEmpty() && title.origin().cell() == null;
    if (!line || !PlainText.of(title.text()).trim().equals(over)) return;
    running.remove(running.size() - 1);
    lookedAt = running.size();
  }

  /** The heading, or the few words, that a table stands under; empty when there are none. */
  String headingOver(List<Paragraph> running) {
    if (repeated == null) repeated = RepeatedLines.of(document, vocabulary);
    for (; lookedAt < running.size(); lookedAt++) {
      Paragraph p = running.get(lookedAt);
      if (p.isAside()) continue;
      String text = PlainText.of(p.text()).trim();
      if (repeated.has(text)) continue;
      last = text;
      Outline.Label label = Outline.label(p, last);
      if (Outline.heading(p, label)) heading = label.rest();
    }
    if (running.isEmpty()) return "";
    if (last.length() < LONGEST_TITLE && !last.endsWith(".")) return last;
    String title = outline.runIn(last);
    return title.isEmpty() ? heading : title;
  }
}
