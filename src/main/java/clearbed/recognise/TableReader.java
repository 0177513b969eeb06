package clearbed.recognise;

import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.model.report.Account;
import clearbed.recognise.lesson.LetteredProducts;
import clearbed.recognise.schedule.ChangeLog;
import clearbed.recognise.schedule.ScheduleFinder;
import clearbed.recognise.schedule.TableLedger;
import clearbed.recognise.schedule.card.BuildUpCards;
import clearbed.recognise.schedule.card.CardBlocks;
import clearbed.recognise.schedule.card.GluedTitles;
import clearbed.recognise.schedule.card.PlaceCard;
import clearbed.recognise.schedule.card.PropertySheet;
import clearbed.recognise.schedule.card.RoomTitle;
import clearbed.recognise.schedule.column.MarkEvidence;
import clearbed.recognise.schedule.grid.DescribedMarks;
import clearbed.recognise.schedule.grid.RepeatingBlanks;
import clearbed.recognise.schedule.grid.SameCells;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.CountedNotes;
import clearbed.recognise.section.OutlineParser;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.SpanFinder;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What each table of a document is, and what it says. */
final class TableReader {
  private final Vocabulary vocabulary;
  private final ScheduleFinder scheduleFinder;
  private final OutlineParser outlineParser;
  private final SpanFinder spans;
  private final CountedNotes countedNotes;
  private final PropertySheet propertySheet;
  private final PlaceCard placeCard;
  private final ChangeLog changeLog;

  TableReader(
      Vocabulary vocabulary,
      StatementFinder finder,
      SpanFinder spans,
      ScheduleFinder scheduleFinder,
      OutlineParser outlineParser,
      CountedNotes countedNotes) {
    this.vocabulary = vocabulary;
    this.spans = spans;
    this.scheduleFinder = scheduleFinder;
    this.outlineParser = outlineParser;
    this.countedNotes = countedNotes;
    this.propertySheet = new PropertySheet(vocabulary);
    this.placeCard = new PlaceCard(vocabulary, finder);
    this.changeLog = new ChangeLog(vocabulary);
  }

  /** Takes a table for what it is: answers, notes, cards, a schedule, or rows of words. */
  void read(Collected c, Table written, List<Paragraph> running, MarkEvidence marks) {
    List<GluedTitles.RunOn> glued = GluedTitles.of(written);
    if (!glued.isEmpty()) {
      for (GluedTitles.RunOn card : glued) {
        if (!card.title().isEmpty())
          running.add(Paragraph.body(written.origin().withText(card.title()), card.title()));
        read(c, card.table(), running, marks);
      }
      return;
    }
    Table filled = c.blanksRepeat ? RepeatingBlanks.filled(written) : written;
    Table t = LetteredProducts.called(SameCells.repeated(filled, vocabulary), vocabulary);
    List<Paragraph> answers = AnsweredTable.answers(t, vocabulary);
    List<Paragraph> items = answers.isEmpty() ? AddressedTable.items(t, vocabulary) : answers;
    List<Paragraph> notes = items.isEmpty() ? NumberedTable.notes(t, countedNotes) : items;
    if (notes.isEmpty()) notes = BuildUpCards.paragraphs(t, vocabulary);
    if (!notes.isEmpty()) {
      inWords(c, t, notes, running);
      return;
    }
    String over = c.headingOver(running);
    String tab = tabOfCard(t);
    PropertySheet.Sheet properties = changeLog.read(t);
    boolean ofRoom = RoomTitle.isNumbered(over, vocabulary);
    String title = !tab.isEmpty() ? tab : ofRoom ? "" : over;
    if (properties.isEmpty() && cards(c, t, title, running, marks)) return;
    if (properties.isEmpty()) properties = propertySheet.read(t, title);
    if (!properties.isEmpty()) {
      inWords(c, t, properties.paragraphs(), running);
      c.rows.addAll(properties.rows());
      return;
    }
    List<Table> cards = CardBlocks.of(t);
    if (!cards.isEmpty()) {
      for (Table card : cards) read(c, card, running, marks);
      return;
    }
    boolean ofTile = TagFinder.firstTags(over) != null && !ofRoom;
    PropertySheet.Sheet room = ofTile ? PropertySheet.NONE : placeCard.read(t, over);
    if (!room.isEmpty()) {
      inWords(c, t, room.paragraphs(), running);
      c.rows.addAll(room.rows());
      return;
    }
    ScheduleFinder.Result found =
        scheduleFinder.find(DescribedMarks.parted(t, vocabulary), over, marks, c.codes);
    boolean products = products(found, t, running);
    if (!products) rows(c, found, over, running);
    if (products || !found.schedule()) {
      List<Account.Column> weighed =
          found.ledgers().stream().flatMap(l -> l.weighed().stream()).toList();
      c.accounting.table(new Account.TableAccount(t.origin(), "none", weighed));
      // A table that is no schedule still says something, row by row: "Mortar | ANSI A118.15,
      // white".
      new RowText(c.unexplained(t), vocabulary).into(running);
    } else {
      notes(c, found, t, marks);
    }
  }

  /** Takes a table for running text, and for no schedule. */
  private static void inWords(
      Collected c, Table t, List<Paragraph> paragraphs, List<Paragraph> running) {
    c.accounting.table(new Account.TableAccount(t.origin(), "none", List.of()));
    running.addAll(paragraphs);
  }

  /** True where the table is one of cards, whose rows are now among those of the schedules. */
  boolean cards(
      Collected c, Table written, String over, List<Paragraph> running, MarkEvidence marks) {
    // A title with the mark is where people find the cell: many cards have a B7.
    boolean titled = TagFinder.firstTags(over) != null && written.origin().heading() == null;
    Table t = titled ? written.under(over) : written;
    Optional<ScheduleFinder.Result> found = scheduleFinder.cards(t, over, marks);
    if (found.isEmpty()) return false;
    if (titled) c.underTitles.put(written, t);
    // Words without a mark were no title of a card.
    if (TagFinder.firstTags(over, vocabulary) != null) c.titled(over, running);
    rows(c, found.get(), over, running);
    notes(c, found.get(), t, marks);
    return true;
  }

  private void rows(
      Collected c, ScheduleFinder.Result found, String over, List<Paragraph> running) {
    c.scopes.table(
        running.size(),
        found.rows().stream()
            .filter(row -> row.glass() && row.tagged())
            .map(row -> Tags.key(row.tag()))
            .collect(Collectors.toSet()));
    c.rows.addAll(found.rows());
    c.rooms.addAll(found.rooms());
    c.gaps.addAll(found.gaps());
    if (!found.schedule()) return;
    Set<Long> seen = new HashSet<>();
    String family = vocabulary.family(over);
    for (TableLedger ledger : found.ledgers()) ledger.into(c.accounting, spans, family, seen);
  }

  /** What is said around the rows of a schedule. */
  private void notes(Collected c, ScheduleFinder.Result found, Table t, MarkEvidence marks) {
    if (found.notes().isEmpty()) return;
    c.paragraphs.addAll(found.notes());
    Section noted = outlineParser.notes(found.notes(), t.origin(), marks.mark());
    if (noted != null) c.sections.add(noted);
  }

  /** The mark on the tab of a sheet of names and values; empty for other sheets. */
  private static String tabOfCard(Table t) {
    String tab = t.origin().sheet();
    boolean card =
        t.sheet()
            && tab != null
            && Tags.isMark(tab)
            && t.rows().stream().flatMap(row -> row.cells().stream()).allMatch(c -> c.column() < 2);
    return card ? tab : "";
  }

  /**
   * A table of mortars or sealants in a section has marks and standards too, but no tile: its rows
   * are clauses.
   */
  private boolean products(ScheduleFinder.Result found, Table t, List<Paragraph> running) {
    if (t.rows().isEmpty() || t.rows().get(0).cells().isEmpty()) return false;
    if (RowText.hasPositions(t, vocabulary)) return true;
    if (running.isEmpty()) return false;
    if (!found.rooms().isEmpty() || found.rows().stream().anyMatch(ScheduleRow::glass))
      return false;
    boolean tagged = found.rows().stream().anyMatch(ScheduleRow::tagged);
    if (tagged && new RowText(t, vocabulary).callsTiles()) return true;
    // "Grout joints" over some columns, beside a blank corner, heads no marks.
    return t.rows().get(0).cells().stream()
        .filter(c -> !tagged || c.column() == 0)
        .map(c -> vocabulary.family(PlainText.of(c.text())))
        .anyMatch(WorkFamilies.PARTS::contains);
  }
}
