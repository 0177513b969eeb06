package clearbed.recognise.schedule;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.report.Fate;
import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.recognise.statement.Citations;
import clearbed.recognise.statement.ClauseNumbers;
import clearbed.recognise.statement.Context;
import clearbed.recognise.statement.FigureGaps;
import clearbed.recognise.statement.LimitFinder;
import clearbed.recognise.statement.Limits;
import clearbed.recognise.statement.PlaceSentences;
import clearbed.recognise.statement.Statement;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Phrases;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads the cells of one row of a schedule under its header. */
public final class RowReader {
  /** Type, grade, class or use in the words of ASTM C920, whatever the column is called. */
  private static final Pattern BARE_WIDTH =
      Pattern.compile("(?<![\\w./,-])(\\d{1,2}(?:[.,]\\d)?|\\d/\\d{1,2}) (wide|joints?)\\b");

  private static final Pattern DESIGNATION =
      Pattern.compile(
          "(?:(?:type [SM]|grade (?:NS|P)|class \\d{2,3}(?:/\\d{2})?|use (?:NT|T|I|M|G|A|O)),?\\s*)+",
          Pattern.CASE_INSENSITIVE);

  /** Named in place of an attribute: a cell calls for something by its mark, "MB-1". */
  public static final String MARK = "mark";

  /** Longer cells are descriptions, in characters. */
  private static final int LONGEST_CALL = 120;

  /** "Points, compatible with K1": what the mark stands for is not called for there. */
  private static final Pattern FITTING =
      Pattern.compile("\\bcompatib\\w+ (?:with|to)\\b[^;.]*", Pattern.CASE_INSENSITIVE);

  private static final Pattern BEHIND_DITTO =
      Pattern.compile("\\s*(?:[,;:-]|but\\b)\\s*(?=\\S)", Pattern.CASE_INSENSITIVE);

  private static final String STROKES = "-\u2013\u2014";

  /** The strokes around a word: "- do -". */
  private static final Pattern BETWEEN_RULES =
      Pattern.compile("^[-\u2013\u2014\\s]+|[-\u2013\u2014\\s]+$");

  private static final Pattern LISTED = Pattern.compile("\\s*[,;/+&]\\s*|\\s+and\\s+");

  private static final Pattern FIRST = Pattern.compile("\\s*[,;(].*$", Pattern.DOTALL);

  private static final Pattern UNIT =
      Pattern.compile("units?|u/m|uom|unit of measure(?:ment)?", Pattern.CASE_INSENSITIVE);

  private static final Pattern FIELD =
      Pattern.compile("\\d[\\d.,]*\\s?\\p{L}{0,4}\\s?[x×X]\\s?\\d[\\d.,]*\\s?\\p{L}{0,4}\\.?");

  /** Its first group is there where the width comes first. */
  private static final Pattern WIDTH_AND_DEPTH =
      Pattern.compile(
          "\\b(?:(w(?:idth|ide)?)\\W{0,3}(?:x|by|and)?\\W{0,3}d(?:epth|eep)?|d(?:epth|eep)?\\W{0,3}(?:x|by|and)?\\W{0,3}w(?:idth|ide)?)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern SIDES = Pattern.compile("\\d\\s?[x×X]\\s?\\d");

  private static final int LONG = 500;

  /** So many words are no figure with its unit. */
  private static final int SENTENCE = 5;

  /** A cell that says so many things of a tile is no chance. */
  private static final int DESCRIBED = 2;

  private final Vocabulary vocabulary;
  private final StatementFinder finder;
  private final CellFigures figures;
  private final ShortTerms shorts;
  private final CellValues values;
  private final PlaceSentences places;

  /** As columns are headed that say where a tile is. */
  private final List<Header.Column> placed;

  public RowReader(Vocabulary vocabulary, StatementFinder finder) {
    this(vocabulary, finder, new ShortTerms(vocabulary));
  }

  RowReader(Vocabulary vocabulary, StatementFinder finder, ShortTerms shorts) {
    this.vocabulary = vocabulary;
    this.shorts = shorts;
    this.figures = new CellFigures(vocabulary.list("schedule.besideFigures"));
    this.values = new CellValues(vocabulary);
    this.places = new PlaceSentences(vocabulary);
    this.placed =
        Stream.of("exposure", "surface")
            .map(heading -> HeadingWords.named(vocabulary, heading))
            .filter(Objects::nonNull)
            .toList();
    this.finder = finder;
  }

  /**
   * The words that describe the material; without such a column, those of the columns not
   * understood.
   */
  String material(Header header, Table.Row row, int tagColumn) {
    List<String> words = new ArrayList<>();
    for (Header.Column column : header.columns().values()) {
      boolean kind = column.attribute() != null && column.attribute().id().equals("tile.kind");
      if ((column.describes() || kind) && column.index() != tagColumn)
        words.add(vocabulary.taught().spelt(text(row, column.index()), ""));
    }
    if (words.stream().allMatch(String::isBlank)) {
      // "Old Brass" under "Color program" is a colour and no brass.
      for (Header.Role role : List.of(Header.Role.OTHER, Header.Role.UNASKED))
        for (Header.Column c : header.all(role))
          if (!vocabulary.list("schedule.looks").in(c.text()) && !isOfOtherWork(c))
            words.add(text(row, c.index()));
    }
    return String.join(" | ", words.stream().filter(w -> !w.isBlank()).toList());
  }

  /** "Board on steel studs" under "Backing" is what a tile is on, if it is not clear of what. */
  private static boolean isOfOtherWork(Header.Column column) {
    List<String> could = column.evidence().could();
    return !could.isEmpty() && !could.get(0).startsWith("tile.");
  }

  String tileStandard(Header header, Table.Row row) {
    for (Header.Column column : header.all(Header.Role.ATTRIBUTE)) {
      if (column.attribute().id().equals("tile.standard")) {
        return String.join(
            " ",
            Citations.find(text(row, column.index())).stream()
                .map(f -> f.standard().designation())
                .toList());
      }
    }
    return "";
  }

  /** What a row of rooms says of the exposure, as written. */
  String exposure(Header header, Table.Row row) {
    return header.all(Header.Role.ATTRIBUTE).stream()
        .filter(c -> c.attribute().id().equals("location.exposure"))
        .map(c -> text(row, c.index()))
        .filter(t -> !t.isBlank())
        .findFirst()
        .orElse("");
  }

  /** Room number and name as one text. */
  String room(Header header, Table.Row row) {
    List<String> words = new ArrayList<>();
    for (Header.Column column : header.columns().values()) {
      boolean room = column.attribute() != null && column.attribute().id().equals("location.room");
      boolean number =
          column.role() != Header.Role.SURFACE
              && vocabulary
                  .list("schedule.roomNumber")
                  .matches(column.text().toLowerCase(Locale.ROOT).replace(".", ""));
      if (room
          || number
          || (column.role() == Header.Role.MATERIAL
              && column.text().toLowerCase(Locale.ROOT).contains("name")))
        words.add(text(row, column.index()));
    }
    return String.join(" ", words.stream().filter(w -> !w.isBlank()).toList());
  }

  List<Statement> statements(
      Table table,
      Header header,
      Table.Row row,
      Table.Row above,
      int tagColumn,
      CellMemo memo,
      List<Document.Gap> gaps,
      CellFates fates) {
    List<Statement> out = new ArrayList<>();
    for (Header.Column column : header.columns().values()) {
      Table.Cell cell = row.at(column.index());
      if (column.role() == Header.Role.FORMER || column.role() == Header.Role.UNASKED) {
        if (cell != null) fates.cell(cell, column, Fate.SET_ASIDE);
        continue;
      }
      if (cell != null && !cell.continued()) out.addAll(leftOpen(table, cell, column));
      if (column.index() == tagColumn) continue;
      if (cell == null || cell.text().isBlank()) continue;
      if (ditto(cell)) {
        cell = above == null ? null : above.at(column.index());
        if (cell == null) {
          gaps.add(
              new Document.Gap(
                  table.origin(row.at(column.index())),
                  "repeats the cell above, but there is none"));
          fates.cell(row.at(column.index()), column, Fate.NOT_UNDERSTOOD);
          continue;
        }
      }
      Origin origin = table.origin(cell);
      Table.Cell read = spelt(withUnitBeside(header, row, column, cell), column);
      List<Statement> said = memo.of(column, read.text(), origin, () -> cell(origin, read, column));
      if (said.isEmpty() && !table.apart().isEmpty()) said = inWords(origin, read, column);
      gaps.addAll(FigureGaps.of(vocabulary, said));
      out.addAll(said);
      fates.cell(cell, column, fate(column, cell, said));
    }
    for (Header.Column as : placed)
      if (out.stream().noneMatch(s -> s.attribute().equals(as.attribute().id())))
        out.addAll(described(as, table, header, row, tagColumn));
    withoutSupposed(out);
    return out;
  }

  /** "Method: ANSI A108.5" of a card, whose names are the office's own: as a sentence says it. */
  private List<Statement> inWords(Origin origin, Table.Cell cell, Header.Column column) {
    if (column.attribute() != null || column.describes() || column.text().isBlank())
      return List.of();
    String text = PlainText.of(cell.text()).trim();
    String sentence = column.text() + ": " + text;
    return find(origin, sentence, column, Context.running("", Set.of(), true)).stream()
        .map(s -> asWritten(s, text))
        .toList();
  }

  /** "Reaction resin" beside "R2T" tells no class by itself. */
  private static void withoutSupposed(List<Statement> row) {
    Set<String> written = new TreeSet<>();
    for (Statement s : row) if (isClass(s) && isWritten(s)) written.add(s.attribute());
    row.removeIf(s -> isClass(s) && !isWritten(s) && written.contains(s.attribute()));
  }

  private static boolean isClass(Statement s) {
    return s.attribute().endsWith(".isoClass");
  }

  private static boolean isWritten(Statement s) {
    return s.asWritten().contains(s.content().text());
  }

  /** Where the tile is, by its description, should no column say it. */
  private List<Statement> described(
      Header.Column as, Table table, Header header, Table.Row row, int tagColumn) {
    List<Statement> out = new ArrayList<>();
    for (Header.Column column : header.columns().values()) {
      Table.Cell cell = row.at(column.index());
      if (cell == null || column.index() == tagColumn) continue;
      // "Interior floor, wet" under "Exposure" tells the surface, too.
      boolean exposed = isOfExposure(column);
      String text = PlainText.of(cell.text());
      List<String> told =
          column.describes() ? places.in(text) : exposed ? List.of(text) : List.of();
      for (String place : told)
        for (Statement s : property(as, place, table.origin(cell)))
          if (s.attribute().equals(as.attribute().id())
              && !(s.content() instanceof Content.Words)
              && !out.contains(s)) out.add(s);
    }
    return out;
  }

  /** "Exposure", and "Where / exposure", which is of the room as well. */
  private boolean isOfExposure(Header.Column column) {
    if (column.attribute() == null || !isPlace(column)) return false;
    return column.attribute().id().equals("location.exposure")
        || column.text().indexOf('/') >= 0
            && vocabulary
                .attribute("location.exposure")
                .orElseThrow()
                .words()
                .headers()
                .in(column.text());
  }

  /** Takes what came of a cell. */
  interface CellFates {
    CellFates NOBODY = (cell, column, fate) -> {};

    void cell(Table.Cell cell, Header.Column column, Fate fate);
  }

  private Fate fate(Header.Column column, Table.Cell cell, List<Statement> found) {
    boolean doubtful = found.stream().anyMatch(s -> s.content() instanceof Content.NotUnderstood);
    if (!doubtful && found.stream().anyMatch(s -> understood(column, s))) return Fate.READ;
    boolean says = !vocabulary.list("empty").matches(PlainText.line(cell.text()));
    boolean elsewhere = vocabulary.list("schedule.elsewhere").in(PlainText.line(cell.text()));
    boolean calls = column.role() == Header.Role.CALLS;
    if (!says || elsewhere || calls || column.describes() || isStandard(column, cell))
      return Fate.CONTEXT;
    return Fate.NOT_UNDERSTOOD;
  }

  /** "Method | ANSI A108.5": a standard where nothing is asked for. */
  private static boolean isStandard(Header.Column column, Table.Cell cell) {
    String text = PlainText.line(cell.text()).strip();
    if (column.attribute() != null || !Citations.mayCite(text)) return false;
    List<Citations.Found> cited = Citations.find(text);
    return cited.size() == 1 && cited.get(0).asWritten().equals(text);
  }

  /** Words in a column of figures or standards were kept, not understood. */
  private static boolean understood(Header.Column column, Statement s) {
    if (s.content() instanceof Content.NotUnderstood) return false;
    return !(s.content() instanceof Content.Words)
        || column.attribute() != null && column.attribute().kind() == Attribute.Kind.WORDS;
  }

  /** The cell with the words that the legends of the set have for its letters. */
  private Table.Cell spelt(Table.Cell cell, Header.Column column) {
    if (!vocabulary.taught().spells()) return cell;
    String words = vocabulary.taught().spelt(cell.text(), vocabulary.family(column.text()));
    return words.equals(cell.text()) ? cell : cell.withText(words);
  }

  /** Bills of quantities have the unit of each quantity in a column of its own. */
  private static Table.Cell withUnitBeside(
      Header header, Table.Row row, Header.Column column, Table.Cell cell) {
    boolean quantity =
        column.measures()
            && column.attribute().dimension() == Dimension.AREA
            && column.unit() == null;
    if (!quantity || cell.text().chars().anyMatch(Character::isLetter)) return cell;
    for (Header.Column other : header.all(Header.Role.OTHER)) {
      String unit = UNIT.matcher(other.text()).matches() ? text(row, other.index()) : "";
      if (!unit.isEmpty()) return cell.withText(cell.text().trim() + " " + unit);
    }
    return cell;
  }

  /** What a line over the items of a bill says of the tile of each. */
  List<Statement> described(String text, Origin origin) {
    Header.Column none = new Header.Column(-1, "", Header.Role.MATERIAL, null, "", null);
    return find(origin, PlainText.line(text).strip(), none, Context.running("", Set.of(), true));
  }

  /** The row with every ditto mark outside the tag column replaced by what it repeats. */
  Table.Row repeated(Table.Row row, Table.Row above, int tagColumn) {
    if (above == null || row.cells().stream().noneMatch(c -> ditto(c) || behindDitto(c) != null))
      return row;
    List<Table.Cell> cells = new ArrayList<>();
    for (Table.Cell cell : row.cells()) {
      Table.Cell from = above.at(cell.column());
      String more = behindDitto(cell);
      boolean repeats = cell.column() != tagColumn && (ditto(cell) || more != null) && from != null;
      cells.add(
          repeats
              ? new Table.Cell(
                  cell.column(),
                  cell.columnSpan(),
                  false,
                  more == null ? from.text() : from.text() + ", " + more,
                  from.remark(),
                  from.firstRow(),
                  from.page())
              : cell);
    }
    return row.withCells(cells);
  }

  /** A row with dittos or long texts, whose faults are to show while its document is read. */
  boolean isUnusual(Table.Row row) {
    return row.cells().stream().anyMatch(c -> c.text().length() > LONG || ditto(c));
  }

  private boolean ditto(Table.Cell cell) {
    String text = PlainText.of(cell.text()).trim();
    if (vocabulary.list("ditto").matches(text)) return true;
    // Most cells begin with no stroke and end with none.
    if (!isRuled(text)) return false;
    return vocabulary.list("ditto").matches(BETWEEN_RULES.matcher(text).replaceAll(""));
  }

  private static boolean isRuled(String text) {
    return !text.isEmpty()
        && (STROKES.indexOf(text.charAt(0)) >= 0
            || STROKES.indexOf(text.charAt(text.length() - 1)) >= 0);
  }

  /** "Ditto, mirror back": what is said beside the repetition; null when nothing is. */
  private String behindDitto(Table.Cell cell) {
    String text = PlainText.of(cell.text()).trim();
    Phrases.Hit hit = vocabulary.list("ditto").first(text);
    if (hit == null || hit.start() > 0) return null;
    String rest = text.substring(hit.end());
    Matcher more = BEHIND_DITTO.matcher(rest);
    return more.lookingAt() ? rest.substring(more.end()) : null;
  }

  /** The columns understood that a row leaves empty, one for an attribute. */
  List<Header.Column> blankColumns(Header header, Table.Row row) {
    Map<String, Header.Column> out = new LinkedHashMap<>();
    for (Header.Column column : header.all(Header.Role.ATTRIBUTE)) {
      Table.Cell cell = row.at(column.index());
      boolean blank = cell == null || cell.text().isBlank();
      if (blank) out.putIfAbsent(column.attribute().id(), column);
    }
    return List.copyOf(out.values());
  }

  /** What a list item says of an attribute that its lead-in names. */
  public List<Statement> property(Header.Column column, String value, Origin origin) {
    List<Statement> out = new ArrayList<>();
    String text = PlainText.of(value).trim();
    if (empty(column.attribute(), text)) return out;
    attribute(out, origin, text, column, column.attribute());
    out.removeIf(
        s ->
            s.content() instanceof Content.Words
                && column.attribute().kind() != Attribute.Kind.WORDS
                && !column.attribute().id().equals("substrate.type"));
    if (column.attribute().kind() == Attribute.Kind.WORDS && isPlace(column) && isOwn(text)) {
      for (Header.Column as : placed) {
        boolean told = out.stream().anyMatch(s -> s.attribute().equals(as.attribute().id()));
        if (told) continue;
        for (Statement s : property(as, value, origin))
          if (out.stream().noneMatch(o -> o.content().equals(s.content()))) out.add(s);
      }
    }
    return out;
  }

  /** Not so "beside the sauna" and "at columns C1 to C6", which name what is not the tile's. */
  private boolean isOwn(String place) {
    return LimitFinder.firstTags(place) == null && !vocabulary.list("places.beside").in(place);
  }

  private static boolean isPlace(Header.Column column) {
    return column.attribute().family().equals("location");
  }

  private List<Statement> cell(Origin origin, Table.Cell cell, Header.Column column) {
    List<Statement> out = new ArrayList<>();
    TwoUnits pair = TwoUnits.of(column.text());
    String plain = PlainText.of(cell.text()).trim();
    String text = measured(column, pair == null ? plain : pair.spelt(plain));
    Attribute attribute = meant(column, text);
    if (DESIGNATION.matcher(text).matches()) {
      out.addAll(find(origin, text, column, Context.running("sealant", Set.of(), false)));
    } else if (attribute == null) {
      boolean material = column.describes();
      String family = material ? "tile" : vocabulary.family(column.text());
      List<Statement> told = widthAndDepth(origin, text, column);
      if (told.isEmpty() && !material && family.isEmpty()) told = ofTile(origin, text, column);
      if (!told.isEmpty()) {
        out.addAll(told);
      } else {
        out.addAll(find(origin, text, column, Context.running(family, Set.of(), material)));
        if (!material && family.isEmpty()) out.addAll(opening(origin, text, column));
      }
      if (material && column.unit() != null) describedSize(out, origin, text, column);
    } else if (attribute.id().equals("notes")) {
      out.addAll(find(origin, text, column, Context.running("", Set.of(), true)));
    } else if (!empty(attribute, text)) {
      attribute(out, origin, text, column, attribute);
    }
    marks(out, origin, text, column);
    return out;
  }

  /** "3 wide; CG2 WA" under "Joint, grout", in the unit that is noted for the whole document. */
  private static String measured(Header.Column column, String text) {
    boolean noted =
        column.unit() != null
            && column.attribute() != null
            && column.attribute().family().equals("grout")
            && column.attribute().kind() != Attribute.Kind.AMOUNT;
    return noted ? BARE_WIDTH.matcher(text).replaceAll("joint $1 " + column.unit().symbol()) : text;
  }

  /** A size in a unit that is noted for the whole of the document. */
  private void describedSize(
      List<Statement> out, Origin origin, String text, Header.Column column) {
    Attribute size = vocabulary.attribute("tile.size").orElseThrow();
    if (out.stream().anyMatch(s -> s.attribute().equals(size.id())) || !SIDES.matcher(text).find())
      return;
    Quantities.size(text, column.unit(), column.mark())
        .filter(found -> found.sides().size() > 1)
        .ifPresent(found -> out.add(statement(size, found, text, origin)));
  }

  /** "8 x 5 mm" under "Width x depth of sealant" is of the joint and of what fills it. */
  private static List<Statement> widthAndDepth(Origin origin, String text, Header.Column column) {
    Matcher heading = WIDTH_AND_DEPTH.matcher(column.text());
    if (!heading.find()) return List.of();
    Content.Size pair =
        Quantities.size(text, column.unit(), column.mark())
            .filter(size -> size.sides().size() == 2)
            .orElse(null);
    if (pair == null) return List.of();
    boolean turned = heading.group(1) == null;
    Quantity width = pair.sides().get(turned ? 1 : 0);
    Quantity depth = pair.sides().get(turned ? 0 : 1);
    return List.of(
        statement("movement.width", Content.Amount.exact(width), text, origin),
        statement("sealant.depth", Content.Amount.exact(depth), text, origin));
  }

  /**
   * "Kiln-formed glass, 6 in. x 24 in., no backing": words that say this and that of a tile
   * describe it, whatever they stand under. Empty where they do not.
   */
  private List<Statement> ofTile(Origin origin, String text, Header.Column column) {
    if (text.split("\\s+", SENTENCE).length < SENTENCE) return List.of();
    List<Statement> told = find(origin, text, column, Context.running("tile", Set.of(), true));
    long said =
        told.stream()
            .map(Statement::attribute)
            .filter(a -> a.startsWith("tile."))
            .distinct()
            .count();
    return said < DESCRIBED ? List.of() : told;
  }

  /** "Translucent, aqua" under "Look": its first words say what the tile is. */
  private List<Statement> opening(Origin origin, String text, Header.Column column) {
    String first = FIRST.matcher(text).replaceFirst("");
    return find(origin, first, column, Context.running("tile", Set.of(), true)).stream()
        .filter(s -> s.attribute().equals("tile.translucency"))
        .map(s -> asWritten(s, text))
        .toList();
  }

  private void marks(List<Statement> out, Origin origin, String written, Header.Column column) {
    if (written.length() > LONGEST_CALL) return;
    String text = FITTING.matcher(written).replaceAll(" ");
    Set<String> called = new TreeSet<>(LimitFinder.tags(text));
    called.addAll(ClauseNumbers.in(text));
    for (Phrases.Hit taught : vocabulary.taught().tagsIn(text))
      called.add(text.substring(taught.start(), taught.end()));
    if (column.role() == Header.Role.CALLS && called.isEmpty()) called.add(text);
    for (String mark : called)
      out.add(new Statement(MARK, new Content.Words(mark), false, written, origin, Limits.NONE));
  }

  /** A comment on a cell is what a person says of it: what it leaves open is open. */
  private List<Statement> leftOpen(Table table, Table.Cell cell, Header.Column column) {
    if (cell.remark().isBlank()) return List.of();
    Attribute attribute = column.attribute();
    boolean any = attribute == null || attribute.id().equals("notes");
    Context context = any ? Context.running("", Set.of(), true) : Context.column(attribute);
    Origin origin = table.origin(cell).withPart("comment");
    return find(origin, PlainText.of(cell.remark()), column, context).stream()
        .filter(Statement::isOpen)
        .toList();
  }

  /** A row is about its own tile: places and kinds named in its cells limit nothing. */
  private List<Statement> find(Origin origin, String text, Header.Column column, Context context) {
    Context own = context.with(column.mark()).under(column.text());
    return finder.find(text, origin, own).stream().map(s -> s.withLimits(Limits.NONE)).toList();
  }

  private boolean empty(Attribute attribute, String text) {
    if (vocabulary.list("schedule.elsewhere").in(text)) return true;
    return vocabulary.list("empty").matches(text) && !attribute.isTerm(text);
  }

  /** "Floor" alone is a surface, whether its column is called "face" or "applied to". */
  private Attribute meant(Header.Column column, String text) {
    Attribute attribute = column.attribute();
    boolean place = attribute != null && attribute.family().equals("location");
    if (column.describes() || place) return attribute;
    if (attribute != null && attribute.isTerm(text)) return attribute;
    Attribute other = attribute == null ? null : namedInstead(attribute, text);
    if (other != null) return other;
    return vocabulary
        .attribute("location.surface")
        .filter(surface -> surface.isTerm(text))
        .orElse(attribute);
  }

  /** "Tensile, 1.0 N/mm2" under "Adhesion" is no shear bond; null where the cell names no other. */
  private Attribute namedInstead(Attribute headed, String text) {
    boolean denied = headed.kind() == Attribute.Kind.AMOUNT && headed.words().not().in(text);
    if (!denied) return null;
    return vocabulary.attributes().stream()
        .filter(a -> a.kind() == headed.kind() && a.dimension() == headed.dimension())
        .filter(a -> a.family().equals(headed.family()) && a.words().cues().in(text))
        .filter(a -> !a.words().not().in(text))
        .findFirst()
        .orElse(null);
  }

  private void attribute(
      List<Statement> out, Origin origin, String text, Header.Column column, Attribute headed) {
    Attribute attribute = measured(headed, text, column.mark());
    if (!isMeasured(attribute)) {
      out.addAll(stated(origin, text, text, column, attribute));
      return;
    }
    // "3,0 x 3,0" under "Field at most (m)": the joints stand at its longer side.
    if (attribute.id().equals("movement.spacing") && FIELD.matcher(text).matches()) {
      Quantities.size(text, column.unit(), column.mark())
          .map(field -> field.sides().stream().max(Quantity::compareTo).orElseThrow())
          .map(side -> new Content.Amount(side, side, Bound.EXACT))
          .ifPresent(spacing -> out.add(statement(attribute, spacing, text, origin)));
      if (out.stream().anyMatch(s -> s.attribute().equals(attribute.id()))) return;
    }
    String told =
        attribute.dimension() == Dimension.LENGTH || attribute.kind() == Attribute.Kind.SIZE
            ? BothSystems.told(text, column.mark())
            : text;
    CellFigures.Reading reading = figures.read(told, attribute, column.unit(), column.mark());
    if (!reading.plain()) {
      out.add(statement(attribute, new Content.NotUnderstood(text), text, origin));
      for (Statement s : find(origin, text, column, Context.column(attribute)))
        if (!isFigure(s)) out.add(s);
      if (text.split("\\s+", SENTENCE).length == SENTENCE)
        beside(out, origin, text, column, attribute);
      return;
    }
    out.addAll(stated(origin, text, reading.text(), column, attribute));
    if (!reading.text().equals(text)) terms(out, origin, text, column, attribute);
  }

  /** "PTV 38, slider 57": beside its figure a cell may have a term of the same thing. */
  private void terms(
      List<Statement> out, Origin origin, String text, Header.Column column, Attribute attribute) {
    for (Statement s : find(origin, text, column, Context.column(attribute))) {
      boolean more = out.stream().noneMatch(o -> o.attribute().equals(s.attribute()));
      if (more && s.content() instanceof Content.Term) out.add(s);
    }
  }

  /** "White mortar on cement board. Joint 1/8": a sentence says more than what it stands under. */
  private void beside(
      List<Statement> out, Origin origin, String text, Header.Column column, Attribute attribute) {
    String own = attribute.family();
    for (Statement s : find(origin, text, column, Context.running("", Set.of(), true))) {
      boolean more = out.stream().noneMatch(o -> o.attribute().equals(s.attribute()));
      if (more && !s.attribute().startsWith(own + ".") && !isFigure(s)) out.add(s);
    }
  }

  private static boolean isMeasured(Attribute attribute) {
    return attribute.kind() == Attribute.Kind.AMOUNT || attribute.kind() == Attribute.Kind.SIZE;
  }

  private static boolean isFigure(Statement s) {
    return s.content() instanceof Content.Amount
        || s.content() instanceof Content.Size
        || s.content() instanceof Content.NotUnderstood;
  }

  /**
   * What a cell whose figures are plain states; its own words where nothing was found in it.
   *
   * @param read the same text with the unit of the heading
   */
  private List<Statement> stated(
      Origin origin, String text, String read, Header.Column column, Attribute attribute) {
    List<Statement> found = new ArrayList<>();
    boolean size = attribute.kind() == Attribute.Kind.SIZE;
    if (size) {
      Quantities.size(read, column.unit(), column.mark())
          .ifPresent(s -> found.add(statement(attribute, s, text, origin)));
    }
    for (Statement s : find(origin, read, column, Context.column(attribute))) {
      boolean again = size && s.attribute().equals(attribute.id()) && !found.isEmpty();
      if (!again) found.add(asWritten(s, text));
    }
    boolean said = found.stream().anyMatch(s -> says(attribute, s));
    if (said) return found;
    List<String> terms = terms(column, attribute, text);
    for (String term : terms) found.add(statement(attribute, new Content.Term(term), text, origin));
    if (!terms.isEmpty()) return found;
    Optional<Content> test = passed(column, attribute, text);
    if (test.isPresent()) {
      found.add(statement(attribute, test.get(), text, origin));
      return found;
    }
    // A figure that the attribute cannot have is best called by its words, if it is but one.
    boolean other =
        isMeasured(attribute) && CellFigures.mayBeTwo(text)
            || values.unread(attribute, read, found);
    // "Setting: by ANSI A108.5" names no mortar and misses none.
    if (attribute.kind() == Attribute.Kind.STANDARD && Citations.sayHowToSet(text, vocabulary))
      return found;
    // "W41/340" under "Adhesive" calls a clause and is no standard.
    if (attribute.kind() == Attribute.Kind.STANDARD && ClauseNumbers.isOne(text)) return found;
    Content words = other ? new Content.NotUnderstood(text) : new Content.Words(text);
    // "None, dry room" under "Membrane" is as plain as a standard there.
    boolean none =
        !other
            && attribute.kind() == Attribute.Kind.STANDARD
            && vocabulary.list("schedule.denied").matches(text);
    found.add(statement(attribute, none ? new Content.Absent(text) : words, text, origin));
    return found;
  }

  /** "NT, G" under "Use" is two of them; empty where one is none. */
  private List<String> terms(Header.Column column, Attribute attribute, String text) {
    List<Optional<String>> each =
        Arrays.stream(LISTED.split(text.strip())).map(t -> term(column, attribute, t)).toList();
    if (each.size() > 1 && each.stream().allMatch(Optional::isPresent))
      return each.stream().map(Optional::orElseThrow).distinct().toList();
    return term(column, attribute, text).stream().toList();
  }

  private Optional<String> term(Header.Column column, Attribute attribute, String text) {
    return shorts.of(attribute.id(), text).or(() -> headed(column, attribute, text));
  }

  /** "50" under "Class" is "Class 50". */
  private static Optional<String> headed(Header.Column column, Attribute attribute, String text) {
    if (column.text().isEmpty()) return Optional.empty();
    return HeadingWords.classed(attribute, column.text(), text);
  }

  /** "Passed" under "Frost EN ISO 10545-12" is that test. */
  private Optional<Content> passed(Header.Column column, Attribute attribute, String text) {
    if (attribute.kind() != Attribute.Kind.STANDARD) return Optional.empty();
    // "100 cycles, no damage"
    if (Arrays.stream(text.split("[,;]\\s*"))
        .noneMatch(vocabulary.list("schedule.passed")::matches)) return Optional.empty();
    return Citations.find(PlainText.of(column.text())).stream()
        .filter(f -> vocabulary.states(f.standard().designation(), attribute.id()))
        .<Content>map(Citations.Found::standard)
        .findFirst();
  }

  private static Statement statement(
      Attribute attribute, Content content, String text, Origin origin) {
    return statement(attribute.id(), content, text, origin);
  }

  private static Statement statement(
      String attribute, Content content, String text, Origin origin) {
    return new Statement(attribute, content, false, text, origin, Limits.NONE);
  }

  private boolean says(Attribute column, Statement s) {
    return s.attribute().equals(column.id())
        || vocabulary.attribute(s.attribute()).filter(column::mayGive).isPresent();
  }

  /** A length under "movement joint" is a width, whether the header names the unit or the cell. */
  private Attribute measured(Attribute attribute, String text, DecimalMark mark) {
    if (attribute.kind() != Attribute.Kind.STANDARD) return attribute;
    List<Quantities.Found> found = Quantities.find(text, mark);
    boolean length =
        Quantities.parse(text, Dimension.LENGTH, mark).isPresent()
            || !found.isEmpty() && found.get(0).content() instanceof Content.NotUnderstood;
    return length ? HeadingWords.fitting(vocabulary, attribute, found.get(0).unit()) : attribute;
  }

  private static Statement asWritten(Statement s, String text) {
    return new Statement(s.attribute(), s.content(), s.excluded(), text, s.origin(), s.limits());
  }

  private static String text(Table.Row row, int column) {
    Table.Cell cell = row.at(column);
    return cell == null ? "" : PlainText.of(cell.text()).trim();
  }
}
