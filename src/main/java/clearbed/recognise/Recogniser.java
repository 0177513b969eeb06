package clearbed.recognise;

import clearbed.base.Memo;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Placed;
import clearbed.model.document.Table;
import clearbed.model.report.Account;
import clearbed.model.report.Fate;
import clearbed.read.source.Reasons;
import clearbed.recognise.schedule.ChangeLog;
import clearbed.recognise.schedule.ScheduleFinder;
import clearbed.recognise.schedule.TableLedger;
import clearbed.recognise.schedule.card.BuildUpCards;
import clearbed.recognise.schedule.card.CardBlocks;
import clearbed.recognise.schedule.card.CardLines;
import clearbed.recognise.schedule.card.GluedTitles;
import clearbed.recognise.schedule.card.PlaceCard;
import clearbed.recognise.schedule.card.PropertySheet;
import clearbed.recognise.schedule.card.RoomTitle;
import clearbed.recognise.schedule.column.MarkEvidence;
import clearbed.recognise.schedule.grid.CalledCodes;
import clearbed.recognise.schedule.grid.DescribedMarks;
import clearbed.recognise.schedule.grid.RepeatingBlanks;
import clearbed.recognise.schedule.grid.SameCells;
import clearbed.recognise.schedule.row.LaterSchedule;
import clearbed.recognise.schedule.row.RoomUse;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.CountedNotes;
import clearbed.recognise.section.MarksBehind;
import clearbed.recognise.section.OutlineParser;
import clearbed.recognise.section.SentenceLedger;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.GlassMentions;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.section.outline.Outline;
import clearbed.recognise.statement.Accounting;
import clearbed.recognise.statement.SpanFinder;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.code.Citation;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.TagList;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.figure.FigureGaps;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Lessons;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Turns the blocks of a document into facts. Holds no state between documents. */
public final class Recogniser {
  private static final int LONGEST_TITLE = 70;
  private final Vocabulary vocabulary;
  private final EarlierFacts kept;
  private final OutlineParser outlineParser;
  private final PropertySheet propertySheet;
  private final PlaceCard placeCard;
  private final ChangeLog changeLog;
  private final CountedNotes countedNotes;
  private final ScheduleFinder scheduleFinder;
  private final StatementFinder finder;
  private final GlassMentions mentions;
  private final LessonFinder lessons;
  private final SpanFinder spans;
  private final SentenceLedger sentences;
  private final Memo<String, List<Citations.Found>> cited = Memo.ofTexts();

  public Recogniser(Vocabulary vocabulary) {
    this(vocabulary, EarlierFacts.NONE);
  }

  /**
   * @param kept facts that are not looked for again
   */
  public Recogniser(Vocabulary vocabulary, EarlierFacts kept) {
    this(vocabulary, new StatementFinder(vocabulary), new SpanFinder(vocabulary), kept, false);
  }

  /**
   * @param finder what is understood
   * @param spans what may mean something, understood or not
   */
  Recogniser(Vocabulary vocabulary, StatementFinder finder, SpanFinder spans) {
    this(vocabulary, finder, spans, EarlierFacts.NONE, false);
  }

  private Recogniser(
      Vocabulary vocabulary,
      StatementFinder finder,
      SpanFinder spans,
      EarlierFacts kept,
      boolean traces) {
    this.vocabulary = vocabulary;
    this.kept = kept;
    this.finder = finder;
    this.mentions = new GlassMentions(vocabulary);
    this.lessons = new LessonFinder(vocabulary);
    this.spans = spans;
    this.sentences = new SentenceLedger(vocabulary, finder, spans);
    this.outlineParser = new OutlineParser(vocabulary, finder);
    this.propertySheet = new PropertySheet(vocabulary);
    this.placeCard = new PlaceCard(vocabulary, finder);
    this.changeLog = new ChangeLog(vocabulary);
    this.countedNotes = new CountedNotes(vocabulary);
    this.scheduleFinder = new ScheduleFinder(vocabulary, finder, spans, traces);
  }

  /** All words that layers have taught it, as one text; empty for none. */
  public String taught() {
    return vocabulary.taught().key();
  }

  /** What a document says; one that cannot be analysed is unreadable. */
  public Facts facts(Document document) {
    boolean read =
        document.status() == Document.Status.READ || document.status() == Document.Status.PARTLY;
    if (!read) return Facts.none(document);
    Facts known = kept.of(document);
    if (known != null) return known;
    try {
      return recognise(document);
    } catch (StackOverflowError | RuntimeException e) {
      return Facts.none(
          Document.unreadable(document.path(), document.format(), Reasons.ofWords(e)));
    }
  }

  /** One that can tell how every sentence and cell ended; it takes more memory for it. */
  public static Recogniser tracing(Vocabulary vocabulary) {
    return new Recogniser(
        vocabulary,
        new StatementFinder(vocabulary),
        new SpanFinder(vocabulary),
        EarlierFacts.NONE,
        true);
  }

  /**
   * How every sentence and cell of a document ended, each once; nothing where it cannot be
   * analysed. To be asked of a {@link #tracing} one.
   */
  public List<Account.Ending> endings(Document document) {
    List<Account.Ending> out = new ArrayList<>();
    try {
      recognise(document, new Accounting(out::add));
    } catch (StackOverflowError | RuntimeException e) {
      return List.of();
    }
    return out;
  }

  /** What a document says; throws where it is such that a program of ours stumbles. */
  public Facts recognise(Document document) {
    return recognise(document, new Accounting(null));
  }

  private Facts recognise(Document written, Accounting accounting) {
    CalledNotes.Read called = CalledNotes.of(written, vocabulary);
    for (Origin at : called.calls()) {
      accounting.cells(Account.Tally.NONE.plus(Fate.CONTEXT));
      accounting.cell(new Account.Ending(at, at.text(), Fate.CONTEXT, ""));
    }
    Document document = called.document();
    Collected c = new Collected(document, accounting);
    MarkEvidence marks = MarkEvidence.of(document);
    List<Paragraph> running = new ArrayList<>();
    // Of "C1 Glass tile" over a table it is to be known that C1 counts articles.
    Iterator<Paragraph> counted = countedNotes.of(paragraphs(document)).iterator();
    List<Table> cards = new ArrayList<>();
    Map<Integer, CardLines.Run> runs = scheduleFinder.cardLines(document.blocks());
    int behind = 0;
    for (int i = 0; i < document.blocks().size(); i++) {
      Block block = document.blocks().get(i);
      if (block instanceof Paragraph) {
        Paragraph next = counted.next();
        if (i < behind) continue;
        CardLines.Run run = runs.get(i);
        boolean isCards = run != null && cards(c, run.table(), "", running, marks);
        if (isCards) cards.add(run.table());
        if (isCards) behind = run.to();
        else running.add(next);
      } else if (block instanceof Table t) {
        table(c, t, running, marks);
      }
    }
    List<Set<String>> sheets = c.scopes.of(running);
    running = countedNotes.of(running);
    Origin origin = Origin.ofDocument(document.path());
    String fileName = document.path().replaceAll(".*/", "");
    c.sections.addAll(outlineParser.parse(running, sheets, fileName, origin, marks.mark()));
    for (Section section : c.sections) {
      unspelt(section, c.gaps);
      for (Clause clause : section.clauses())
        c.gaps.addAll(FigureGaps.of(vocabulary, clause.statements()));
    }
    c.paragraphs.addAll(running);
    sentences.into(c.accounting, c.paragraphs, c.sections);
    return new Facts(
        taken(document, c.gaps),
        c.rows,
        c.rooms,
        c.sections,
        citations(document, cards, c),
        mentions.in(document, c.sections),
        Numbered.in(document),
        // The second reading is by what the first has learned.
        kept == EarlierFacts.NONE ? lessons.in(document) : Lessons.NOTHING,
        c.accounting.account());
  }

  private static List<Paragraph> paragraphs(Document document) {
    List<Paragraph> out = new ArrayList<>();
    for (Block block : document.blocks()) if (block instanceof Paragraph p) out.add(p);
    return MarksBehind.before(out);
  }

  /** The document without its text, with all that was passed over in it. */
  private static Document taken(Document document, List<Document.Gap> gaps) {
    boolean whole = document.status() == Document.Status.READ;
    Document.Status status = whole ? Document.statusFor(gaps) : document.status();
    return new Document(
        document.path(), document.format(), status, document.reason(), List.of(), gaps);
  }

  List<LaterSchedule> later(List<LaterSchedule.Marks> schedules, int rows) {
    return scheduleFinder.later(schedules, rows);
  }

  /** Ranges of more tags than are believed are read by their ends, and not in silence. */
  private static void unspelt(Section section, List<Document.Gap> gaps) {
    for (Clause clause : section.clauses()) {
      if (clause.limits().tags().isEmpty()) continue;
      String range = TagFinder.unspelt(PlainText.of(clause.text()));
      if (!range.isEmpty()) gaps.add(TagList.gap(range, clause.origin()));
    }
  }

  private void table(Collected c, Table written, List<Paragraph> running, MarkEvidence marks) {
    List<GluedTitles.Card> glued = GluedTitles.of(written);
    if (!glued.isEmpty()) {
      for (GluedTitles.Card card : glued) {
        if (!card.title().isEmpty())
          running.add(Paragraph.body(written.origin().withText(card.title()), card.title()));
        table(c, card.table(), running, marks);
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
      for (Table card : cards) table(c, card, running, marks);
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
  private boolean cards(
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

  /**
   * @param cards paragraphs of names and values
   */
  private List<Citation> citations(Document document, List<Table> cards, Collected c) {
    List<Citation> out = new ArrayList<>();
    Set<Origin> lists = new HashSet<>();
    for (Section section : c.sections) {
      for (Clause clause : section.clauses()) {
        boolean listed = clause.listsReferences();
        if (listed && clause.origin().cell() != null) lists.add(cell(clause.origin()));
        for (Citations.Found f : cited(clause.text()))
          out.add(new Citation(f.standard(), f.asWritten(), clause.origin(), listed));
      }
    }
    for (Block block : Stream.concat(document.blocks().stream(), cards.stream()).toList()) {
      if (block instanceof Table written) {
        Table t = c.underTitles.getOrDefault(written, written);
        for (Table.Row row : t.rows()) {
          // "ASTM C920 | Sealants": a row of a list of standards asks for none of them.
          boolean listed =
              !lists.isEmpty()
                  && row.cells().stream().anyMatch(own -> lists.contains(cell(t.origin(own))));
          for (Table.Cell cell : row.cells()) {
            for (Citations.Found f : cited(cell.text()))
              out.add(new Citation(f.standard(), f.asWritten(), t.origin(cell), listed));
          }
        }
      }
    }
    Placed.Placing<Citation> place = new Placed.Placing<>(Citation::origin, Citation::at);
    return new Placed.Packer<>(place, out.size()).pack(out);
  }

  /** The place of a cell, whatever stands in it. */
  private static Origin cell(Origin origin) {
    return origin.withHeading(null).withText(null);
  }

  private List<Citations.Found> cited(String text) {
    if (!Citations.mayCite(text)) return List.of();
    return cited.get(text, () -> List.copyOf(Citations.find(text)));
  }

  private final class Collected {
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

    /** Told when the first table asks what stands over it; null before. */
    private RepeatedLines repeated;

    /** The last heading among the paragraphs looked at so far: each is looked at once. */
    private String heading = "";

    private int lookedAt;

    /** The words of the last paragraph that may stand over what follows it. */
    private String last = "";

    Collected(Document document, Accounting accounting) {
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
          if (cell.hasOwnWords())
            accounting.sentence(t.origin(cell), cell.text(), Fate.CONTEXT, "");
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
      String title = outlineParser.runIn(last);
      return title.isEmpty() ? heading : title;
    }
  }
}
