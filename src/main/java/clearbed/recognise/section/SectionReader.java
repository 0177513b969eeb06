package clearbed.recognise.section;

import clearbed.model.document.Origin;
import clearbed.recognise.section.clause.Amendment;
import clearbed.recognise.section.clause.AmendmentFinder;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.ClauseReferences;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.section.clause.Subject;
import clearbed.recognise.section.clause.SubjectFinder;
import clearbed.recognise.section.outline.OtherMarks;
import clearbed.recognise.section.outline.Outline;
import clearbed.recognise.section.outline.OutlineLine;
import clearbed.recognise.section.outline.OutlineNode;
import clearbed.recognise.section.outline.PublicationLists;
import clearbed.recognise.section.outline.SectionText;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.limit.LimitFinder;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.SectionRole;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Makes clauses of the lines of a section, as far as the section may speak for the work. */
final class SectionReader {
  private static final String TILE_SECTION = "09 30 00";

  /** "Standards named in the schedule and the notes", in characters. */
  private static final int LONGEST_LIST_TITLE = 60;

  private static final Pattern LABEL =
      Pattern.compile("^(?:\\p{L}{1,8} )?\\w{1,3}\\s*[-:\u2013\u2014]\\s+");

  private static final Pattern STOPS = Pattern.compile("[.:]+$");

  /** Numbers of sections on sealants, in two systems. */
  private static final String SEALANTS = "07 9";

  private static final String SEALANTS_BY_WORK = "Z22";

  private final Vocabulary vocabulary;
  private final SubjectFinder subjectFinder;
  private final ClauseReferences references;
  private final AmendmentFinder amendments;
  private final PublicationLists publications;
  private final ClauseStatements clauseStatements;

  SectionReader(Vocabulary vocabulary, StatementFinder finder, LimitFinder limitFinder) {
    this.vocabulary = vocabulary;
    this.subjectFinder = new SubjectFinder(vocabulary);
    this.references = new ClauseReferences(vocabulary);
    this.amendments = new AmendmentFinder(vocabulary);
    this.publications = new PublicationLists(vocabulary);
    this.clauseStatements = new ClauseStatements(vocabulary, finder, limitFinder);
  }

  /** The clauses of a section; empty where nothing was collected. */
  Optional<Section> read(SectionText text, DecimalMark mark) {
    if (text.isEmpty()) return Optional.empty();
    boolean notes = text.notes();
    SectionRole role =
        notes ? null : vocabulary.sections().of(text.number(), text.title()).orElse(null);
    if ((role == null || role.families().isEmpty()) && !notes && text.isOnTile())
      role = vocabulary.sections().of(TILE_SECTION, "").orElse(null);
    SectionReading reading = new SectionReading(text, role, mark, amends(text), text.ofOtherWork());
    List<Clause> clauses = new ArrayList<>();
    boolean[] listed = publications.in(text.lines().stream().map(OutlineLine::text).toList());
    for (int i = 0; i < listed.length; i++)
      clauses.add(clause(text.lines().get(i), reading, listed[i]));
    for (OutlineLine remark : text.remarks()) {
      Clause clause = clause(remark, reading, false);
      if (!clause.leftOpen().isEmpty()) clauses.add(clause.asRemark());
    }
    return Optional.of(
        new Section(
            text.number(),
            text.title(),
            text.origin(),
            role != null && role.article(),
            notes,
            role == null ? Set.of(Section.ALL) : Set.copyOf(role.families()),
            references.followed(clauses)));
  }

  private boolean amends(SectionText text) {
    return vocabulary.amends(text.openingTitle()) || vocabulary.amends(text.fileName());
  }

  private Clause clause(OutlineLine p, SectionReading reading, boolean listed) {
    OutlineNode own = p.own();
    String cite = Outline.cite(p.path().stream().map(n -> n.wording().label().number()).toList());
    Origin at =
        p.paragraph().origin().withHeading(cite.isEmpty() ? p.heading() : cite).withText(p.text());
    boolean references = listed || isReference(p);
    List<Statement> statements = statements(p, at, reading, references);
    Amendment amendment = Amendment.NONE;
    if (!references && !own.heading())
      amendment =
          amendments
              .in(p.text(), reading.amending(), text -> clauseStatements.of(p, text, at, reading))
              .of(own.limits().tags());
    return new Clause(
        cite,
        p.heading(),
        at,
        p.text(),
        own.limits(),
        amendment.changes() ? amendment.now() : statements,
        references,
        subject(p, reading.text().others()),
        amendment);
  }

  private boolean isReference(OutlineLine p) {
    return isOnStandards(p) && publications.lists(p.text())
        || p.path().stream().filter(OutlineNode::heading).anyMatch(n -> isReferences(n.text()))
            && !asks(p.text());
  }

  private List<Statement> statements(
      OutlineLine p, Origin at, SectionReading reading, boolean references) {
    SectionRole role = reading.role();
    OutlineNode own = p.own();
    boolean anyTile = own.limits().tags().isEmpty();
    boolean mute =
        reading.silent() && !own.wording().tagged() && anyTile
            || references
            || own.heading()
            || role != null && role.families().isEmpty() && anyTile;
    List<Statement> out = new ArrayList<>();
    if (!mute) out.addAll(clauseStatements.of(p, p.text(), at, reading));
    else if (own.heading() && !references && !reading.silent())
      out.addAll(clauseStatements.ofTitle(p, at, reading));
    if (reading.unknown()
        && !own.limits().glass()
        && anyTile
        && out.stream().noneMatch(s -> s.limits().glass() || !s.limits().tags().isEmpty()))
      out.clear();
    if (role == null) return out;
    if (!role.only().isEmpty()) out.removeIf(s -> !role.only().contains(s.attribute()));
    if (role.number().startsWith(SEALANTS) || role.number().equals(SEALANTS_BY_WORK))
      out.replaceAll(SectionReader::tileAtLarge);
    return out;
  }

  private Subject subject(OutlineLine p, OtherMarks others) {
    List<String> above =
        p.above().stream()
            .map(n -> n.wording().subjects())
            .filter(tags -> !tags.isEmpty())
            .reduce(List.of(), (outer, inner) -> inner);
    String words = p.text();
    List<String> own = p.own().wording().subjects();
    boolean names = own.isEmpty() && p.own().wording().tagged();
    List<String> mentioned = names ? others.outOf(List.copyOf(TagFinder.tags(words))) : List.of();
    return subjectFinder.of(words, own, above, mentioned);
  }

  /** "Wet areas: to AS 3740" asks for it, whatever the heading. */
  private boolean asks(String text) {
    List<Citations.Found> cited = Citations.find(text);
    if (cited.isEmpty()) return false;
    String before = PlainText.of(text).substring(0, cited.get(0).start());
    return vocabulary.list("clause.asked").endsAt(before, before.length());
  }

  /** "2. STANDARDS NAMED", "Publications". */
  private boolean isOnStandards(OutlineLine p) {
    return p.path().stream()
        .filter(OutlineNode::heading)
        .anyMatch(
            n ->
                n.text().length() < LONGEST_LIST_TITLE
                    && vocabulary.list("ofStandards").in(n.text()));
  }

  private boolean isReferences(String heading) {
    String words = STOPS.matcher(heading.trim()).replaceAll("");
    // "BOX E - STANDARDS REFERRED TO"
    return vocabulary.list("references").matches(words)
        || vocabulary.list("references").matches(LABEL.matcher(words).replaceFirst(""));
  }

  /** In a section on sealants, joints in ceramic tile are joints in tile. */
  private static Statement tileAtLarge(Statement s) {
    Limits l = s.limits();
    return new Statement(
        s.attribute(),
        s.content(),
        s.excluded(),
        s.asWritten(),
        s.origin(),
        new Limits(
            l.tags(),
            l.glass(),
            l.otherTile().contains("openings") ? Set.of("openings") : Set.of(),
            l.exposures(),
            l.except(),
            l.surfaces(),
            l.with()));
  }
}
