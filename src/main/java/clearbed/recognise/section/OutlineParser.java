package clearbed.recognise.section;

import clearbed.base.Memo;
import clearbed.model.Content;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.recognise.schedule.Header;
import clearbed.recognise.schedule.HeadingWords;
import clearbed.recognise.schedule.RowReader;
import clearbed.recognise.section.Wordings.Wording;
import clearbed.recognise.statement.Citations;
import clearbed.recognise.statement.Context;
import clearbed.recognise.statement.LimitFinder;
import clearbed.recognise.statement.Limits;
import clearbed.recognise.statement.Parts;
import clearbed.recognise.statement.PlaceSentences;
import clearbed.recognise.statement.Statement;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.Tags;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Reads running text as sections: number and title, parts, articles, paragraphs, each with what it
 * stands under.
 */
public final class OutlineParser {
  private static final Pattern SECTION =
      Pattern.compile(
          "^(?:SECTION|Section|DOCUMENT)\\s+(\\d{2}[ .-]?\\d{2}[ .-]?\\d{2}(?:\\.\\d{2})?|\\d{5}|[A-Z]\\d{2})\\b\\s*[-:.]*\\s*(.*)$");
  private static final Pattern BARE_SECTION =
      Pattern.compile(
          "^(\\d{2} \\d{2} \\d{2}(?:\\.\\d{2})?|[A-Z]\\d{2})\\s*[-:.]?\\s+([A-Z][A-Za-z ,/&-]{3,60})$");
  private static final Pattern END =
      Pattern.compile("^END OF (?:SECTION|DOCUMENT).*", Pattern.CASE_INSENSITIVE);
  private static final Pattern FILE_NUMBER =
      Pattern.compile("(?:^|[^0-9])(\\d{2})[ _.-]?(\\d{2})[ _.-]?(\\d{2})(?:\\.\\d{2})?(?![0-9])");

  private static final Pattern NUMBER_IN_MARGIN =
      Pattern.compile("\\b(?:SECTION\\s+)?(\\d{2} \\d{2} \\d{2})\\b");
  private static final Pattern FIRST_PART =
      Pattern.compile("^PART\\s+(?:1|I|ONE)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern FIRST_ARTICLE =
      Pattern.compile("^\\s*(?:1[.]0?1|1[.]|01|100|105|110)\\s+\\S");

  /** A part or a first article stands this close below the title of a section, in paragraphs. */
  private static final int OPENING_LINES = 4;

  private static final Pattern STOPS = Pattern.compile("[.:]+$");
  private static final Pattern BLANKS = Pattern.compile("\\s+");
  private static final Pattern GLASS = Pattern.compile("\\bglass\\b", Pattern.CASE_INSENSITIVE);
  private static final String TILE_SECTION = "09 30 00";

  /** Of so many paragraphs on tile and grout, and of every fourth at least, a section is known. */
  private static final int FEWEST_ON_TILE = 5;

  private static final int LONGEST_OPENING = 160;

  /** Names of projects and places stand in so many lines from the top, and have so many words. */
  private static final int TITLE_LINES = 5;

  private static final int NAME_WORDS = 3;

  /** A title of fewer words, "Pool tiling", says what all below it is for. */
  private static final int TITLE_WORDS = 5;

  /** A line of a title, in characters, and in words where it ends as a sentence does. */
  private static final int LONGEST_TITLE = 110;

  private static final int LONGEST_LINE = 12;

  /** "Standards named in the schedule and the notes", in characters. */
  private static final int LONGEST_LIST_TITLE = 60;

  /** Lines before a title and it. */
  private static final int OPENING_TITLES = 6;

  private static final int LONGEST_VALUE = 60;

  /** "Place: penthouse balconies, planter wall. Exterior, wet, freezing and sun." */
  private static final Set<String> TOLD_AT_LENGTH = Set.of("location", "substrate");

  /** "Goes on: cast concrete wall" speaks of no cast tile, nor of mortar. */
  private static final Pattern OF_NO_SUBSTRATE =
      Pattern.compile("mortar\\.(?!membraneUse)|tile\\.kind|tile\\.backing");

  private static final Set<String> NAMES_A_MORTAR = Set.of("mortar.standard", "mortar.isoClass");

  private static final int LONGEST_TOLD = 400;

  private static final Pattern FIRST_ITEM = Pattern.compile("(?s)(?:;|\\.\\s).*$");

  private final Vocabulary vocabulary;
  private final StatementFinder finder;
  private final LimitFinder limitFinder;
  private final RowReader rowReader;
  private final SubjectFinder subjectFinder;
  private final ClauseReferences references;
  private final AmendmentFinder amendments;
  private final PublicationLists publications;
  private final Wordings wordings;
  private final Leads leads;
  private final PlaceSentences places;

  /** As a column of a schedule is headed that says where each tile is. */
  private final Header.Column exposure;

  private final Memo<String, Optional<Property>> properties = Memo.ofTexts();

  public OutlineParser(Vocabulary vocabulary, StatementFinder finder) {
    this.vocabulary = vocabulary;
    this.finder = finder;
    this.limitFinder = new LimitFinder(vocabulary);
    this.rowReader = new RowReader(vocabulary, finder);
    this.subjectFinder = new SubjectFinder(vocabulary);
    this.references = new ClauseReferences(vocabulary);
    this.amendments = new AmendmentFinder(vocabulary);
    this.publications = new PublicationLists(vocabulary);
    this.wordings = new Wordings(vocabulary, finder, limitFinder);
    this.leads = new Leads(vocabulary);
    this.places = new PlaceSentences(vocabulary);
    this.exposure = HeadingWords.named(vocabulary, "exposure");
  }

  /** The title that runs in before the words of a paragraph; or empty. */
  public String runIn(String words) {
    return leads.runIn(words);
  }

  /**
   * The sections of a document; text before the first one, or of a document without any, is notes.
   *
   * @param sheets for each paragraph the tiles of the sheet that it stands on; empty for none
   * @param fileName gives the section number where the text does not
   * @param mark that figures have before their decimals
   */
  public List<Section> parse(
      List<Paragraph> paragraphs,
      List<Set<String>> sheets,
      String fileName,
      Origin origin,
      DecimalMark mark) {
    List<Section> sections = new ArrayList<>();
    OtherMarks others = OtherMarks.of(paragraphs);
    Builder builder = new Builder(origin, fileName, mark, others);
    boolean ended = false;
    for (int i = 0; i < paragraphs.size(); i++) {
      Paragraph p = paragraphs.get(i);
      if (p.region() == Paragraph.Region.HEADER || p.region() == Paragraph.Region.FOOTER) {
        builder.margin(p);
        continue;
      }
      String text = PlainText.of(p.text()).trim();
      if (p.region() == Paragraph.Region.COMMENT) {
        builder.remark(p, text);
        continue;
      }
      Matcher m = SECTION.matcher(BLANKS.matcher(text).replaceAll(" "));
      boolean bare =
          (builder.isEmpty() || others.entitle(text)) && BARE_SECTION.matcher(text).matches();
      boolean opens =
          m.matches() && (builder.isEmpty() || ended || opensSection(paragraphs, i, text));
      ended = END.matcher(text).matches() || ended && text.isEmpty();
      if (opens || bare) {
        if (bare) {
          m = BARE_SECTION.matcher(text);
          if (!m.matches()) continue;
        }
        builder.finish(sections);
        String title = m.group(2);
        if (title.isBlank() && i + 1 < paragraphs.size() && isTitle(paragraphs.get(i + 1)))
          title = PlainText.of(paragraphs.get(++i).text()).trim();
        builder = new Builder(p.origin().withText(p.text()), fileName, mark, others);
        builder.section(m.group(1), title);
      } else if (!END.matcher(text).matches() && !text.isEmpty()) {
        builder.add(p, text, sheets.get(i));
      }
    }
    builder.finish(sections);
    return sections;
  }

  /**
   * "Section 12 36 61 - Simulated stone countertops, for SS-2" in a list of related work opens no
   * section: one that does is a heading, or a part or a first article follows.
   */
  private static boolean opensSection(List<Paragraph> paragraphs, int at, String text) {
    Paragraph p = paragraphs.get(at);
    if (p.headingLevel() > 0) return true;
    if (!p.label().isBlank() || text.endsWith(".")) return false;
    int seen = 0;
    for (int i = at + 1; i < paragraphs.size() && seen < OPENING_LINES; i++) {
      String next = PlainText.of(paragraphs.get(i).text()).trim();
      if (next.isEmpty()) continue;
      seen++;
      if (FIRST_PART.matcher(next).find()
          || FIRST_ARTICLE.matcher(paragraphs.get(i).label() + " " + next).find()) return true;
      if (SECTION.matcher(next).matches()) return false;
    }
    return false;
  }

  /** Notes around a schedule, or beside it on the same document. */
  public Section notes(List<Paragraph> paragraphs, Origin origin, DecimalMark mark) {
    List<Section> sections = new ArrayList<>();
    Builder builder = new Builder(origin, "", mark, OtherMarks.of(paragraphs));
    builder.scheduleNotes = true;
    for (Paragraph p : paragraphs) {
      String text = PlainText.of(p.text()).trim();
      if (p.region() == Paragraph.Region.COMMENT) builder.remark(p, text);
      else builder.add(p, text, Set.of());
    }
    builder.finish(sections);
    return sections.isEmpty() ? null : sections.get(0);
  }

  private static boolean isTitle(Paragraph p) {
    String text = p.text().trim();
    return text.length() < 80
        && !text.isEmpty()
        && !Wordings.opensPart(text)
        && !text.matches("^\\d.*|^[A-Z]\\..*");
  }

  /**
   * @param family what it says, or what stands above it where it says nothing
   * @param limits its own and those of what stands above it
   */
  private record Node(Wording wording, String family, Limits limits, Origin at) {
    boolean heading() {
      return wording.heading();
    }

    String text() {
      return wording.words();
    }
  }

  /** "Face size: 2 by 6 inches" in a list under a tag. */
  private record Property(Header.Column column, String value) {}

  /** Collects one section. */
  private final class Builder {
    private final Origin origin;
    private final String fileName;
    private final DecimalMark mark;
    private final OtherMarks others;

    /** The tiles of the sheet that the last paragraph stands on. */
    private Set<String> sheet = Set.of();

    /** Part of the work that the last paragraph spoke of, or empty. */
    private String lastWork = "";

    private String number = "";
    private String title = "";
    private boolean section;
    private boolean scheduleNotes;
    private int part;
    private Boolean amending;
    private final Deque<Node> path = new ArrayDeque<>();
    private final Introductions introductions = new Introductions();
    private final List<Pending> pending = new ArrayList<>();
    private final List<Pending> remarks = new ArrayList<>();

    /** What the last paragraph that speaks of glass tile stands under. */
    private List<Node> aboveGlass;

    /**
     * @param path what it stands under, and itself
     */
    /**
     * @param introduction the line over the list that it is an item of, or empty
     */
    private record Pending(Paragraph paragraph, List<Node> path, int part, String introduction) {
      Node own() {
        return path.get(path.size() - 1);
      }

      String text() {
        return own().text();
      }
    }

    Builder(Origin origin, String fileName, DecimalMark mark, OtherMarks others) {
      this.origin = origin;
      this.others = others;
      this.fileName = fileName;
      this.mark = mark;
    }

    boolean isEmpty() {
      return pending.isEmpty() && !section;
    }

    void section(String number, String title) {
      this.section = true;
      this.number = canonical(number);
      this.title = title.trim();
    }

    /** A running header often repeats the section number when the text does not give it. */
    void margin(Paragraph p) {
      Matcher m = NUMBER_IN_MARGIN.matcher(PlainText.of(p.text()));
      if (number.isEmpty() && m.find()) number = canonical(m.group(1));
    }

    void add(Paragraph p, String text, Set<String> on) {
      Wording wording = others.outOf(wordings.of(p, text));
      if (wording.part() > 0) {
        part = wording.part();
        section = true;
        path.clear();
        return;
      }
      if (!on.equals(sheet)) path.clear();
      sheet = on;
      while (!path.isEmpty() && (leaves(p) || isBehind(wording, path.peekLast().wording())))
        path.removeLast();
      path.addLast(node(wording, p));
      String over = introductions.next(wording.label());
      pending.add(new Pending(p, List.copyOf(path), part, over));
    }

    /** What stands in a table ends with it. */
    private boolean leaves(Paragraph p) {
      Origin over = path.peekLast().at();
      return over.cell() != null && !Objects.equals(sheetOrTable(over), sheetOrTable(p.origin()));
    }

    private static List<Object> sheetOrTable(Origin at) {
      return at.cell() == null ? null : Arrays.asList(at.sheet(), at.page(), at.paragraph());
    }

    private boolean isBehind(Wordings.Wording now, Wordings.Wording before) {
      boolean text = now.rank() == Wordings.TEXT_RANK;
      return before.rank() >= now.rank() || text && before.rank() == Wordings.LEAD_IN_RANK;
    }

    /** What people say of a paragraph stands under it, and nothing stands under that. */
    void remark(Paragraph p, String text) {
      path.addLast(node(wordings.of(p, text), p));
      remarks.add(new Pending(p, List.copyOf(path), part, ""));
      path.removeLast();
    }

    private Node node(Wording wording, Paragraph p) {
      Limits limits = inTitleBlock(wording) ? Limits.NONE : otherThanGlass(wording);
      if (!sheet.isEmpty() && limits.tags().isEmpty()) limits = limits.withTags(sheet);
      if (!path.isEmpty()) limits = own(limits, wording).within(path.peekLast().limits());
      return new Node(wording, family(wording), limits, p.origin());
    }

    /** Below "d. GT-3: ..." a paragraph that opens with GT-5 and GT-6 is about those. */
    private Limits own(Limits limits, Wording wording) {
      Set<String> above = path.peekLast().limits().tags();
      if (above.isEmpty() || !limits.tags().isEmpty()) return limits;
      Set<String> own = wording.subjects().stream().map(Tags::key).collect(Collectors.toSet());
      return own.isEmpty() || !Collections.disjoint(own, above) ? limits : limits.withTags(own);
    }

    /** A line at the top that names the project or its place limits nothing. */
    private boolean inTitleBlock(Wording wording) {
      // "Harbour Pools - how we tile this job" names who writes, above all else.
      if (wording.heading()
          && pending.isEmpty()
          && !wording.tagged()
          && wording.words().split("\\s+").length >= TITLE_WORDS) return true;
      return wording.heading()
          && wording.label().rank() < 0
          && !wording.tileWork()
          && !wording.tagged()
          && wording.family().isEmpty()
          && pending.size() < TITLE_LINES
          && wording.words().split("\\s+", NAME_WORDS + 1).length >= NAME_WORDS
          && pending.stream().allMatch(before -> before.own().wording().label().rank() < 0);
    }

    /** Under mortar, a tile named is what the mortar is for. */
    private String family(Wording wording) {
      String own = wording.family();
      String above = path.isEmpty() ? "" : path.peekLast().family();
      boolean inherits = own.isEmpty() || own.equals("tile") && !wording.heading();
      String family = inherits && !above.isEmpty() ? above : own;
      // "Bedding adhesive: C2TE" and behind it "Colour: white".
      boolean property = vocabulary.list("clause.propertyWord").matches(wording.lead());
      boolean vague = family.isEmpty() || family.equals("tile");
      if (vague && property && !wording.heading() && !lastWork.isEmpty()) return lastWork;
      lastWork = own.equals("tile") ? "" : own;
      return family;
    }

    /** "Other tile: ..." behind "Glass tile: ..." is not about glass. */
    private Limits otherThanGlass(Wording wording) {
      List<Node> above = List.copyOf(path);
      Limits limits = wording.limits();
      if (limits.glass()) aboveGlass = above;
      return above.equals(aboveGlass) ? LimitFinder.behindGlass(limits, wording.lead()) : limits;
    }

    void finish(List<Section> sections) {
      if (pending.isEmpty() && remarks.isEmpty()) return;
      if (!section && !scheduleNotes && titledAsTileWork()) {
        section = true;
        title = titleOfTileWork();
      }
      if (number.isEmpty() && section) number = numberOfFile();
      if (title.isEmpty() && section) title = titleOfFile();
      Vocabulary.SectionRole role =
          section || !number.isEmpty() ? vocabulary.role(number, title).orElse(null) : null;
      boolean notes = !section && number.isEmpty();
      if ((role == null || role.families().isEmpty()) && !notes && isOnTile())
        role = vocabulary.role(TILE_SECTION, "").orElse(null);
      boolean article = role != null && role.article();
      boolean unknown = role == null && !notes;
      List<Clause> clauses = new ArrayList<>();
      boolean tileDocument =
          scheduleNotes || !notes || pending.stream().anyMatch(p -> TileWords.tileWork(p.text()));
      boolean[] listed = publications.in(pending.stream().map(Pending::text).toList());
      for (int i = 0; i < pending.size(); i++)
        clauses.add(clause(pending.get(i), role, notes && !tileDocument, unknown, listed[i]));
      for (Pending remark : remarks) {
        Clause clause = clause(remark, role, notes && !tileDocument, unknown, false);
        if (!clause.leftOpen().isEmpty()) clauses.add(clause.asRemark());
      }
      sections.add(
          new Section(
              number,
              title,
              origin,
              article,
              notes,
              role == null ? Set.of(Section.ALL) : Set.copyOf(role.families()),
              references.followed(clauses)));
    }

    /** A section of an unknown number and title is known by what it says. */
    private boolean isOnTile() {
      long tile = pending.stream().filter(p -> TileWords.tileWork(p.text())).count();
      return tile >= FEWEST_ON_TILE && tile * 4 >= pending.size();
    }

    /**
     * Offices outside the numbered systems title their sections in words: {@code SPECIFICATION OF
     * TILE WORK}.
     */
    private boolean titledAsTileWork() {
      if (pending.size() < 6) return false;
      for (String title : titles()) {
        if (title.matches("(?is).*\\b(?:notes?|schedule|addendum|minutes|legend)\\b.*"))
          return false;
        boolean work = title.matches("(?is).*\\b(?:specifications?|works?|tiling)\\b.*");
        if (work && TileWords.tile(title)) return true;
      }
      return false;
    }

    private String titleOfTileWork() {
      return titles().stream()
          .filter(TileWords::tile)
          .findFirst()
          .orElseGet(() -> pending.get(0).text());
    }

    /** Office, project and title, line for line, down to what carries a number. */
    private List<String> titles() {
      List<String> out = new ArrayList<>();
      if (opening().length() < LONGEST_OPENING) out.add(opening());
      for (Pending p : pending.subList(0, Math.min(OPENING_TITLES, pending.size()))) {
        String text = p.text();
        if (!out.isEmpty() && !p.own().wording().label().number().isEmpty()) break;
        if (text.length() < LONGEST_TITLE && !isSentence(text)) out.add(text);
      }
      return out;
    }

    private static boolean isSentence(String text) {
      return text.endsWith(".") && text.split("\\s+").length > LONGEST_LINE;
    }

    private String opening() {
      return pending.get(0).text() + (pending.size() > 1 ? " " + pending.get(1).text() : "");
    }

    private Clause clause(
        Pending p, Vocabulary.SectionRole role, boolean silent, boolean unknown, boolean listed) {
      Node own = p.own();
      String cite = Outline.cite(p.path().stream().map(n -> n.wording().label().number()).toList());
      Origin at =
          p.paragraph()
              .origin()
              .withHeading(cite.isEmpty() ? own.heading() ? own.text() : headingOf(p) : cite)
              .withText(p.text());
      boolean references =
          listed
              || isOnStandards(p) && publications.lists(p.text())
              || p.path().stream().filter(Node::heading).anyMatch(n -> isReferences(n.text()))
                  && !asks(p.text());
      List<Statement> statements = new ArrayList<>();
      boolean mute =
          silent && !own.wording().tagged() && own.limits().tags().isEmpty()
              || references
              || own.heading()
              || (role != null && role.families().isEmpty() && own.limits().tags().isEmpty());
      if (!mute) statements.addAll(statements(p, own, at, role));
      else if (own.heading() && !references && !silent) statements.addAll(titled(p, own, at, role));
      if (unknown
          && !own.limits().glass()
          && own.limits().tags().isEmpty()
          && statements.stream().noneMatch(s -> s.limits().glass() || !s.limits().tags().isEmpty()))
        statements.clear();
      if (role != null && !role.only().isEmpty())
        statements.removeIf(s -> !role.only().contains(s.attribute()));
      if (role != null && role.number().startsWith("07 9")
          || role != null && role.number().equals("Z22"))
        statements.replaceAll(OutlineParser::tileAtLarge);
      Amendment amendment = Amendment.NONE;
      if (!references && !own.heading())
        amendment =
            amendments
                .in(p.text(), amending(), text -> statements(p, text, own, at, role))
                .of(own.limits().tags());
      if (amendment.changes()) {
        statements.clear();
        statements.addAll(amendment.now());
      }
      return new Clause(
          cite,
          headingOf(p),
          at,
          p.text(),
          own.limits(),
          statements,
          references,
          subject(p),
          amendment);
    }

    private Subject subject(Pending p) {
      List<String> above =
          p.path().stream()
              .limit(p.path().size() - 1L)
              .map(n -> n.wording().subjects())
              .filter(tags -> !tags.isEmpty())
              .reduce(List.of(), (outer, inner) -> inner);
      String words = p.text();
      List<String> own = p.own().wording().subjects();
      boolean names = own.isEmpty() && p.own().wording().tagged();
      List<String> mentioned =
          names ? others.outOf(List.copyOf(LimitFinder.tags(words))) : List.of();
      return subjectFinder.of(words, own, above, mentioned);
    }

    private boolean amending() {
      if (amending == null) {
        String opening = pending.isEmpty() ? "" : opening();
        boolean titled = opening.length() < LONGEST_OPENING && vocabulary.amends(opening);
        amending = titled || vocabulary.amends(fileName);
      }
      return amending;
    }

    private List<Statement> statements(
        Pending p, Node own, Origin at, Vocabulary.SectionRole role) {
      return statements(p, p.text(), own, at, role);
    }

    private List<Statement> statements(
        Pending p, String text, Node own, Origin at, Vocabulary.SectionRole role) {
      if (text.isEmpty()) return List.of();
      // What a tag is given anywhere is weighed once it is known which tags are tiles.
      boolean all = role == null || own.wording().tagged();
      Set<String> families = all ? Set.of() : Set.copyOf(role.families());
      Context context =
          Context.running(own.family(), families, describesTile(p))
              .with(mark)
              .under(headingOf(p))
              .introducedBy(p.introduction());
      List<Statement> out = new ArrayList<>();
      for (Statement s : finder.find(text, at, context))
        out.add(others.outOf(s).within(own.limits()));
      if (!own.limits().tags().isEmpty()) property(text, own, at, out);
      if (!own.limits().tags().isEmpty() && describesTile(p)) placed(text, own, at, out);
      if (out.isEmpty()) titled(p, own, at, out);
      headed(p, at, out);
      if (own.limits().tags().isEmpty() && noteOffTopic(p))
        out.removeIf(s -> s.attribute().startsWith("process.") && !isOnCuttingGlass(s, text));
      return out;
    }

    /** "MOVEMENT JOINTS (TCNA EJ171)": a title may say by which rules, though of no product. */
    private List<Statement> titled(Pending p, Node own, Origin at, Vocabulary.SectionRole role) {
      List<Citations.Found> cited = Citations.find(p.text());
      // "ASTM C1026  FREEZE-THAW" is a line of a list.
      if (cited.isEmpty() || cited.get(0).start() == 0) return List.of();
      return statements(p, own, at, role).stream()
          .filter(s -> s.content() instanceof Content.Standard)
          .filter(s -> !s.attribute().endsWith(".standard"))
          .toList();
    }

    /** A list item under a tag is read as under the column heading that its lead-in is. */
    private void property(String text, Node own, Origin at, List<Statement> out) {
      Property property = OutlineParser.this.property(text);
      if (property == null) return;
      // "Set on: cement mortar bed" speaks of no mortar.
      boolean substrate = property.column().attribute().family().equals("substrate");
      // "Bed: white mortar, ANSI A118.15" speaks of one.
      if (substrate && out.stream().anyMatch(s -> NAMES_A_MORTAR.contains(s.attribute()))) return;
      if (substrate) out.removeIf(s -> OF_NO_SUBSTRATE.matcher(s.attribute()).lookingAt());
      for (Statement s : rowReader.property(property.column().with(mark), property.value(), at)) {
        // "Bed: at least 95 % contact" is no substrate that nobody knows.
        if (s.content() instanceof Content.Words && !out.isEmpty()) continue;
        boolean said = out.stream().anyMatch(o -> o.attribute().equals(s.attribute()));
        if (!said) out.add(s.within(own.limits()));
      }
    }

    /** "GT-1 and GT-3: 1/16 in" under "Joint widths:" is read as in a column of that heading. */
    private void titled(Pending p, Node own, Origin at, List<Statement> out) {
      String lead = Parts.lead(own.text());
      if (lead.isEmpty() || p.path().size() < 2 || !namesTags(lead)) return;
      String title = p.path().get(p.path().size() - 2).text().replaceFirst(":$", "");
      String value = own.text().substring(lead.length() + 1).trim();
      if (title.length() > LONGEST_VALUE || value.length() > LONGEST_VALUE) return;
      Header.Column column = HeadingWords.named(vocabulary, title);
      if (column == null || column.attribute().kind() != Attribute.Kind.AMOUNT) return;
      for (Statement s : rowReader.property(column.with(mark), value.replaceFirst("\\.$", ""), at))
        out.add(s.within(own.limits()));
    }

    /** "Permanently under water." and "Outside, open to frost: ..." say of a tile where it is. */
    private void placed(String text, Node own, Origin at, List<Statement> out) {
      for (Sentences.Sentence sentence : Sentences.of(PlainText.of(text))) {
        String lead = Parts.lead(sentence.text());
        String where = lead.isEmpty() ? sentence.text() : lead;
        if (exposure == null || !places.isOne(where)) continue;
        // "Showers: ... Hammam: ..." in rules for several tiles says where each of them holds.
        if (!lead.isEmpty() && own.limits().tags().size() > 1) continue;
        for (Statement s : rowReader.property(exposure, where, at)) {
          if (!says(out, s)) out.add(s.within(own.limits()));
        }
      }
    }

    private static boolean says(List<Statement> out, Statement s) {
      return out.stream()
          .anyMatch(o -> o.attribute().equals(s.attribute()) && o.content().equals(s.content()));
    }

    /** "Wet-saw glass with a blade made for glass; eye protection ..." speaks of glass tile. */
    private boolean isOnCuttingGlass(Statement s, String text) {
      return s.attribute().equals("process.cuttingSafety") && GLASS.matcher(text).find();
    }

    /** In notes, site rules count only where the note speaks of tile. */
    private boolean noteOffTopic(Pending p) {
      return !section
          && !scheduleNotes
          && !p.own().wording().tagged()
          && p.path().stream().noneMatch(n -> n.wording().tileWork())
          && pending.stream()
              .limit(OPENING_TITLES)
              .noneMatch(first -> first.own().wording().tileWork())
          && !TileWords.tileWork(title);
    }

    /**
     * The article's title says what its paragraphs require: {@code MOCK-UPS / A. Build one panel of
     * each tile}.
     */
    private void headed(Pending p, Origin at, List<Statement> out) {
      for (String id : Wordings.TITLED_WORKS) {
        boolean under =
            p.path().stream()
                .limit(p.path().size() - 1L)
                .anyMatch(n -> n.wording().works().contains(id));
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
    private boolean describesTile(Pending p) {
      String family = p.own().family();
      if (!family.isEmpty() && !family.equals("tile")) return false;
      // "GT-1: cast glass tile, 4 x 8 in" says what the tile is, whichever part it stands in.
      if (!scheduleNotes && p.own().wording().subjectGlass()) return true;
      if (p.part() == 1 || p.part() == 3 || scheduleNotes) return false;
      return !p.own().limits().tags().isEmpty()
          || p.path().stream().anyMatch(n -> n.wording().glassTile());
    }

    private String headingOf(Pending p) {
      for (int i = p.path().size() - 1; i >= 0; i--) {
        if (p.path().get(i).heading()) return p.path().get(i).text();
      }
      return "";
    }

    /** "Wet areas: to AS 3740" asks for it, whatever the heading. */
    private boolean asks(String text) {
      List<Citations.Found> cited = Citations.find(text);
      if (cited.isEmpty()) return false;
      String before = PlainText.of(text).substring(0, cited.get(0).start());
      return vocabulary.list("clause.asked").endsAt(before, before.length());
    }

    /** "2. STANDARDS NAMED", "Publications". */
    private boolean isOnStandards(Pending p) {
      return p.path().stream()
          .filter(Node::heading)
          .anyMatch(
              n ->
                  n.text().length() < LONGEST_LIST_TITLE
                      && vocabulary.list("ofStandards").in(n.text()));
    }

    private boolean isReferences(String heading) {
      return vocabulary.list("references").matches(STOPS.matcher(heading.trim()).replaceAll(""));
    }

    private String numberOfFile() {
      Matcher m = FILE_NUMBER.matcher(fileName);
      return m.find() ? m.group(1) + " " + m.group(2) + " " + m.group(3) : "";
    }

    private String titleOfFile() {
      return fileName.replaceAll("\\.[A-Za-z0-9]+$", "").replaceAll(".*/", "");
    }
  }

  /** What a list item gives the value of by its lead-in; null when it is none. */
  private Property property(String item) {
    return properties.get(item, () -> Optional.ofNullable(propertyIn(item))).orElse(null);
  }

  private Property propertyIn(String item) {
    String lead = Parts.lead(item);
    String value = lead.isEmpty() ? "" : item.substring(lead.length() + 1).trim();
    if (value.isEmpty()) return null;
    Header.Column column = HeadingWords.named(vocabulary, lead);
    if (column == null) {
      // "GT-4: Ground: cement board" names the tile first.
      if (namesTags(lead)) return propertyIn(value);
      value = FIRST_ITEM.matcher(value).replaceFirst("");
      column = HeadingWords.byValue(vocabulary, lead, value);
    }
    if (column == null) return null;
    boolean told = TOLD_AT_LENGTH.contains(column.attribute().family());
    if (value.length() > (told ? LONGEST_TOLD : LONGEST_VALUE)) return null;
    return new Property(column, value.replaceFirst("\\.$", ""));
  }

  /** "GT-4: epoxy, ANSI A118.3" under "Grout" is no property by the name of GT-4. */
  private static boolean namesTags(String lead) {
    LimitFinder.TagsAt tags = LimitFinder.opening(lead);
    return tags != null && tags.end() == lead.length();
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

  private static String canonical(String number) {
    String digits = number.replaceAll("[ .-]", "");
    if (digits.matches("\\d{6}(?:\\d{2})?"))
      return digits.substring(0, 2) + " " + digits.substring(2, 4) + " " + digits.substring(4, 6);
    // Five-digit numbers of the older edition: 09310 and kin are tile, 07920 sealants.
    if (digits.startsWith("093")) return "09 30 00";
    return digits.equals("07920") || digits.equals("07900") ? "07 92 00" : number;
  }
}
