package clearbed.recognise.section.outline;

import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.recognise.section.outline.Wordings.Wording;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.LimitFinder;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/** Collects the lines of one section, each with what it stands under. */
public final class SectionLines {
  /** Names of projects and places stand in so many lines from the top, and have so many words. */
  private static final int TITLE_LINES = 5;

  private static final int NAME_WORDS = 3;

  /** A title of fewer words, "Pool tiling", says what all below it is for. */
  private static final int TITLE_WORDS = 5;

  private static final int LONGEST_TITLE = 60;

  private final Vocabulary vocabulary;
  private final Wordings wordings;
  private final OtherMarks others;

  /** The tiles of the sheet that the last paragraph stands on. */
  private Set<String> sheet = Set.of();

  /** Part of the work that the last paragraph spoke of, or empty. */
  private String lastWork = "";

  private String number = "";
  private String title = "";
  private boolean section;
  private int part;
  private final Deque<OutlineNode> path = new ArrayDeque<>();
  private final Introductions introductions = new Introductions();
  private final List<OutlineLine> lines = new ArrayList<>();
  private final List<OutlineLine> remarks = new ArrayList<>();

  /** What the last paragraph that speaks of glass tile stands under. */
  private List<OutlineNode> aboveGlass;

  public SectionLines(Vocabulary vocabulary, Wordings wordings, OtherMarks others) {
    this.vocabulary = vocabulary;
    this.wordings = wordings;
    this.others = others;
  }

  public boolean isEmpty() {
    return lines.isEmpty() && !section;
  }

  public void open(String number, String title) {
    this.section = true;
    this.number = SectionNumbers.canonical(number);
    this.title = title.trim();
  }

  /** A running header often repeats the section number when the text does not give it. */
  public void margin(Paragraph p) {
    if (number.isEmpty()) number = SectionNumbers.inMargin(p.text());
  }

  /** What was collected; what the text does not name is named after the file. */
  public SectionText text(Origin origin, String fileName, boolean scheduleNotes) {
    return SectionText.named(
        new SectionText(
            origin,
            fileName,
            others,
            number,
            title,
            section,
            scheduleNotes,
            List.copyOf(lines),
            List.copyOf(remarks)));
  }

  public void add(Paragraph p, String text, Set<String> on) {
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
    if (over.isEmpty() && ItemValues.namesTags(wording.lead())) over = titleAbove();
    lines.add(new OutlineLine(p, List.copyOf(path), part, over));
  }

  /** "Joint widths:" over "GT-1 and GT-3: 1/16 in". */
  private String titleAbove() {
    if (path.size() < 2) return "";
    List<OutlineNode> all = List.copyOf(path);
    String title = all.get(all.size() - 2).text().replaceFirst(":$", "");
    return title.length() > LONGEST_TITLE ? "" : title;
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
  public void remark(Paragraph p, String text) {
    path.addLast(node(wordings.of(p, text), p));
    remarks.add(new OutlineLine(p, List.copyOf(path), part, ""));
    path.removeLast();
  }

  private OutlineNode node(Wording wording, Paragraph p) {
    Limits limits = inTitleBlock(wording) ? Limits.NONE : otherThanGlass(wording);
    if (!sheet.isEmpty() && limits.tags().isEmpty()) limits = limits.withTags(sheet);
    if (!path.isEmpty()) limits = own(limits, wording).within(path.peekLast().limits());
    return new OutlineNode(wording, family(wording), limits, p.origin());
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
        && lines.isEmpty()
        && !wording.tagged()
        && wording.words().split("\\s+").length >= TITLE_WORDS) return true;
    return wording.heading()
        && wording.label().rank() < 0
        && !wording.tileWork()
        && !wording.tagged()
        && wording.family().isEmpty()
        && lines.size() < TITLE_LINES
        && wording.words().split("\\s+", NAME_WORDS + 1).length >= NAME_WORDS
        && lines.stream().allMatch(before -> before.own().wording().label().rank() < 0);
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
    List<OutlineNode> above = List.copyOf(path);
    Limits limits = wording.limits();
    if (limits.glass()) aboveGlass = above;
    return above.equals(aboveGlass) ? LimitFinder.behindGlass(limits, wording.lead()) : limits;
  }
}
