package clearbed.recognise.section;

import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.report.Account;
import clearbed.model.report.Fate;
import clearbed.model.value.Content;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.section.outline.Leads;
import clearbed.recognise.section.outline.Outline;
import clearbed.recognise.statement.Accounting;
import clearbed.recognise.statement.Span;
import clearbed.recognise.statement.SpanFinder;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.ClauseNumbers;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.statement.part.GlassWords;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.taught.Taught;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Says of each sentence of running text what came of it. */
public final class SentenceLedger {
  private static final int LONGEST_LEAD = 60;

  private static final Pattern YES = Pattern.compile("[\\s;]*(?i:yes|confirmed|agreed|correct)\\b");

  /** More words are a line of running text, whatever it ends with. */
  private static final int MOST_WORDS = 7;

  private final Vocabulary vocabulary;
  private final StatementFinder finder;
  private final SpanFinder spans;
  private final GlassWords glass;
  private final Leads leads;

  public SentenceLedger(Vocabulary vocabulary, StatementFinder finder, SpanFinder spans) {
    this.vocabulary = vocabulary;
    this.finder = finder;
    this.spans = spans;
    this.glass = new GlassWords(vocabulary);
    this.leads = new Leads(vocabulary);
  }

  private record SentencePlace(String sheet, String cell, Integer page, Integer paragraph) {
    static SentencePlace of(Origin o) {
      return new SentencePlace(o.sheet(), o.cell(), o.page(), o.paragraph());
    }
  }

  private record InSection(Section section, Clause clause) {}

  /** What came of a sentence, with the reason where it is set aside. */
  private record SentenceEnd(Fate fate, String why, SpanFinder.Candidates could) {
    static SentenceEnd of(Fate fate) {
      return new SentenceEnd(fate, "", null);
    }

    static SentenceEnd aside(String why) {
      return new SentenceEnd(Fate.SET_ASIDE, why, null);
    }
  }

  public void into(Accounting accounting, List<Paragraph> paragraphs, List<Section> sections) {
    Map<SentencePlace, InSection> clauses = new HashMap<>();
    Set<Section> onGlass = new HashSet<>();
    for (Section section : sections) {
      if (speaksOfGlass(section)) onGlass.add(section);
      for (Clause clause : section.clauses())
        clauses.put(SentencePlace.of(clause.origin()), new InSection(section, clause));
    }
    for (Paragraph p : paragraphs) {
      InSection in = clauses.get(SentencePlace.of(p.origin()));
      String text = PlainText.of(p.text());
      Outline.Label label = in == null ? null : Outline.label(p, text.trim());
      for (Sentences.Sentence sentence : Sentences.of(text)) {
        SentenceEnd ending = ending(p, in, sentence.text(), label, onGlass);
        accounting.sentence(p.origin(), sentence.text(), ending.fate(), ending.why());
        if (ending.fate() == Fate.SET_ASIDE) {
          String under = in == null ? "" : in.section().name();
          accounting.setAside(p.origin(), under, ending.why(), 1);
        } else if (ending.fate() == Fate.NOT_UNDERSTOOD) {
          accounting.unread(unread(p, in, sentence.text(), ending));
        }
      }
    }
  }

  private boolean speaksOfGlass(Section section) {
    return glass.asserted(section.title()) != null
        || section.clauses().stream().anyMatch(c -> c.limits().glass());
  }

  private SentenceEnd ending(
      Paragraph p, InSection in, String sentence, Outline.Label label, Set<Section> onGlass) {
    if (p.region() == Paragraph.Region.HEADER || p.region() == Paragraph.Region.FOOTER)
      return SentenceEnd.aside("page header or footer");
    if (in == null) return SentenceEnd.of(Fate.CONTEXT);
    Clause clause = in.clause();
    if (clause.amendment().changes()) return SentenceEnd.of(Fate.READ);
    List<Statement> said = said(clause, sentence);
    if (!said.isEmpty()) return readButFor(in, sentence, said);
    if (Outline.heading(p, label)) return SentenceEnd.of(Fate.CONTEXT);
    if (vocabulary.list("clause.defines").in(sentence)) return SentenceEnd.of(Fate.CONTEXT);
    if (clause.listsReferences()) return SentenceEnd.aside("list of references or related work");
    if (clause.limits().otherTileOnly()) return SentenceEnd.aside("on other tile");
    if (!inReach(in, onGlass)) return SentenceEnd.aside("on other work: " + in.section().name());
    if (sentence.endsWith("?") && !affirmed(label.rest(), sentence))
      return SentenceEnd.aside("a question");
    if (!ClauseNumbers.in(sentence).isEmpty() && isCall(sentence))
      return SentenceEnd.of(Fate.CONTEXT);
    if (title(sentence) || isRunIn(label.rest(), sentence)) return SentenceEnd.of(Fate.CONTEXT);
    SpanFinder.Candidates could =
        spans
            .couldState(sentence, vocabulary.family(clause.heading()))
            .within(id -> mayState(in.section(), id) && !saidAlready(clause, id));
    if (could.all().isEmpty()) return SentenceEnd.aside("no word or figure of what is checked");
    Taught.Word nothing = vocabulary.taught().aside(sentence);
    if (nothing != null)
      return SentenceEnd.aside("nothing that is asked for, " + nothing.evidence());
    return new SentenceEnd(Fate.NOT_UNDERSTOOD, "", could);
  }

  /** "Build a mock-up. The mock-up remains": what a clause requires is required once. */
  private static boolean saidAlready(Clause clause, String attribute) {
    return clause.statements().stream()
        .anyMatch(s -> s.attribute().equals(attribute) && s.content() instanceof Content.Required);
  }

  private static List<Statement> said(Clause clause, String sentence) {
    return clause.statements().stream()
        .filter(s -> sentence.contains(s.asWritten()) || s.asWritten().contains(sentence))
        .toList();
  }

  /** A sentence with a figure or a standard that nothing took is not understood as a whole. */
  private SentenceEnd readButFor(InSection in, String sentence, List<Statement> said) {
    SpanFinder.Candidates left =
        spans
            .leftIn(sentence, vocabulary.family(in.clause().heading()), said)
            .within(id -> mayState(in.section(), id));
    return left.likely().isEmpty() || vocabulary.taught().aside(sentence) != null
        ? SentenceEnd.of(Fate.READ)
        : new SentenceEnd(Fate.NOT_UNDERSTOOD, "", left);
  }

  private boolean mayState(Section section, String attribute) {
    return section.speaksForAll()
        || vocabulary
            .attribute(attribute)
            .map(a -> section.families().contains(a.family()))
            .orElse(false);
  }

  /** "Adhesive: As M41/340." says where to read on, and nothing else. */
  private static boolean isCall(String sentence) {
    return sentence.length() < LONGEST_LEAD
        && Quantities.find(sentence).isEmpty()
        && Citations.find(sentence).stream().allMatch(c -> ClauseNumbers.isOne(c.asWritten()));
  }

  /** "May it be used outdoors? Yes." */
  private static boolean affirmed(String paragraph, String question) {
    // Of "1. What? Yes." the number is the question's, and not in the words behind the label.
    int at = paragraph.indexOf(question);
    if (at < 0) return false;
    return YES.matcher(paragraph).region(at + question.length(), paragraph.length()).lookingAt();
  }

  /** Words over others: short, without a full stop, a colon within, a figure or a standard. */
  private boolean title(String sentence) {
    if (sentence.endsWith(":")) return true;
    boolean open = sentence.endsWith(".") || sentence.contains(": ");
    return sentence.length() < LONGEST_LEAD
        && sentence.split("\\s+").length <= MOST_WORDS
        && !open
        && spans.in(sentence).stream()
            .noneMatch(
                s ->
                    s instanceof Span.Figure
                        || s instanceof Span.Standard
                        || s instanceof Span.ClassCode
                        || s instanceof Span.Modality);
  }

  /** "Curing." over what it says of it. */
  private boolean isRunIn(String words, String sentence) {
    String title = leads.runIn(words);
    return !title.isEmpty() && sentence.endsWith(title + ".");
  }

  /** A section on tile, notes beside it, whatever names glass tile, and all below such a title. */
  private static boolean inReach(InSection in, Set<Section> onGlass) {
    return in.section().article()
        || onGlass.contains(in.section())
        || in.clause().limits().glass()
        || in.section().notes() && TileWords.tile(in.clause().text());
  }

  private static Account.Unread unread(
      Paragraph p, InSection in, String sentence, SentenceEnd ending) {
    Set<String> tags = new TreeSet<>(in.clause().limits().tags());
    String article = in.clause().heading().isEmpty() ? in.section().name() : in.clause().heading();
    return new Account.Unread(
        in.clause().origin().withText(sentence),
        article,
        sentence,
        List.copyOf(ending.could().all()),
        List.copyOf(ending.could().likely()),
        List.copyOf(tags),
        List.of());
  }
}
