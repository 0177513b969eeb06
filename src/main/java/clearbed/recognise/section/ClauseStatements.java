package clearbed.recognise.section;

import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import clearbed.recognise.section.outline.ItemValues;
import clearbed.recognise.section.outline.OutlineLine;
import clearbed.recognise.section.outline.OutlineNode;
import clearbed.recognise.section.outline.SectionText;
import clearbed.recognise.section.outline.Wordings;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.limit.LimitFinder;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.statement.part.Context;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.SectionRole;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** What a line of a section states, by its own words and by those that it stands under. */
final class ClauseStatements {
  private static final Pattern GLASS = Pattern.compile("\\bglass\\b", Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;
  private final StatementFinder finder;
  private final LimitFinder limitFinder;
  private final ItemValues items;

  ClauseStatements(Vocabulary vocabulary, StatementFinder finder, LimitFinder limitFinder) {
    this.vocabulary = vocabulary;
    this.finder = finder;
    this.limitFinder = limitFinder;
    this.items = new ItemValues(vocabulary, finder);
  }

  /**
   * @param text of the line, or that which an amendment puts in its place
   */
  List<Statement> of(OutlineLine p, String text, Origin at, SectionReading reading) {
    if (text.isEmpty()) return List.of();
    OutlineNode own = p.own();
    SectionText section = reading.text();
    SectionRole role = reading.role();
    // What a tag is given anywhere is weighed once it is known which tags are tiles.
    boolean all = role == null || own.wording().tagged();
    Set<String> families = all ? Set.of() : Set.copyOf(role.families());
    Context context =
        Context.running(own.family(), families, describesTile(p, section))
            .with(reading.mark())
            .under(p.heading())
            .introducedBy(p.introduction());
    List<Statement> out = new ArrayList<>();
    for (Statement s : finder.find(text, at, context))
      out.add(section.others().outOf(s).within(own.limits()));
    if (!own.limits().tags().isEmpty()) items.addNamed(text, own, at, reading.mark(), out);
    if (!own.limits().tags().isEmpty() && describesTile(p, section))
      items.addPlaces(text, own, at, out);
    headed(p, at, out);
    if (own.limits().tags().isEmpty() && noteOffTopic(p, section))
      out.removeIf(s -> s.attribute().startsWith("process.") && !isOnCuttingGlass(s, text));
    return out;
  }

  /** "MOVEMENT JOINTS (TCNA EJ171)": a title may say by which rules, though of no product. */
  List<Statement> ofTitle(OutlineLine p, Origin at, SectionReading reading) {
    List<Citations.Found> cited = Citations.find(p.text());
    // "ASTM C1026  FREEZE-THAW" is a line of a list.
    if (cited.isEmpty() || cited.get(0).start() == 0) return List.of();
    return of(p, p.text(), at, reading).stream()
        .filter(s -> s.content() instanceof Content.Standard)
        .filter(s -> !s.attribute().endsWith(".standard"))
        .toList();
  }

  /** "Wet-saw glass with a blade made for glass; eye protection ..." speaks of glass tile. */
  private boolean isOnCuttingGlass(Statement s, String text) {
    return s.attribute().equals("process.cuttingSafety") && GLASS.matcher(text).find();
  }

  /** In notes, site rules count only where the note speaks of tile. */
  private static boolean noteOffTopic(OutlineLine p, SectionText section) {
    return !section.section()
        && !section.scheduleNotes()
        && !p.own().wording().tagged()
        && p.path().stream().noneMatch(n -> n.wording().tileWork())
        && !section.opensOnTileWork();
  }

  /**
   * The article's title says what its paragraphs require: {@code MOCK-UPS / A. Build one panel of
   * each tile}.
   */
  private void headed(OutlineLine p, Origin at, List<Statement> out) {
    for (String id : Wordings.TITLED_WORKS) {
      boolean under = p.above().stream().anyMatch(n -> n.wording().works().contains(id));
      if (!under || out.stream().anyMatch(s -> s.attribute().equals(id))) continue;
      boolean refused =
          vocabulary.list("negation.notRequired").in(p.text())
              || vocabulary.list("open").in(p.text())
              || vocabulary.asksNothing(id, p.text());
      if (refused) continue;
      Limits own =
          limitFinder.of(PlainText.of(p.text()), false).within(p.own().limits()).anywhere();
      out.add(new Statement(id, new Content.Required(), false, p.text(), at, own));
    }
  }

  /** A product article on glass tile, or a clause that names tags, describes the tile itself. */
  private static boolean describesTile(OutlineLine p, SectionText section) {
    String family = p.own().family();
    if (!family.isEmpty() && !family.equals("tile")) return false;
    // "GT-1: cast glass tile, 4 x 8 in" says what the tile is, whichever part it stands in.
    if (!section.scheduleNotes() && p.own().wording().subjectGlass()) return true;
    if (p.part() == 1 || p.part() == 3 || section.scheduleNotes()) return false;
    return !p.own().limits().tags().isEmpty()
        || p.path().stream().anyMatch(n -> n.wording().glassTile());
  }
}
