package clearbed.recognise;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.model.report.Account;
import clearbed.model.report.Fate;
import clearbed.read.source.Reasons;
import clearbed.recognise.lesson.LessonFinder;
import clearbed.recognise.schedule.ScheduleFinder;
import clearbed.recognise.schedule.card.CardLines;
import clearbed.recognise.schedule.column.MarkEvidence;
import clearbed.recognise.schedule.row.LaterSchedule;
import clearbed.recognise.section.CountedNotes;
import clearbed.recognise.section.MarksBehind;
import clearbed.recognise.section.OutlineParser;
import clearbed.recognise.section.SentenceLedger;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.GlassMentions;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.Accounting;
import clearbed.recognise.statement.SpanFinder;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.TagList;
import clearbed.recognise.statement.figure.FigureGaps;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.taught.Lessons;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Turns the blocks of a document into facts. Holds no state between documents. */
public final class Recogniser {
  private final Vocabulary vocabulary;
  private final EarlierFacts kept;
  private final OutlineParser outlineParser;
  private final CountedNotes countedNotes;
  private final ScheduleFinder scheduleFinder;
  private final TableReader tables;
  private final CitedStandards cited = new CitedStandards();
  private final StatementFinder finder;
  private final GlassMentions mentions;
  private final LessonFinder lessons;
  private final SpanFinder spans;
  private final SentenceLedger sentences;

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
    this.countedNotes = new CountedNotes(vocabulary);
    this.scheduleFinder = new ScheduleFinder(vocabulary, finder, spans, traces);
    this.tables =
        new TableReader(vocabulary, finder, spans, scheduleFinder, outlineParser, countedNotes);
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
    Collected c = new Collected(document, accounting, vocabulary, lessons, outlineParser);
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
        boolean isCards = run != null && tables.cards(c, run.table(), "", running, marks);
        if (isCards) cards.add(run.table());
        if (isCards) behind = run.to();
        else running.add(next);
      } else if (block instanceof Table t) {
        tables.read(c, t, running, marks);
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
        cited.in(document, cards, c),
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
}
