package clearbed.recognise.schedule.row;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.report.Fate;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.recognise.schedule.cell.ShortTerms;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.figure.FigureGaps;
import clearbed.recognise.statement.limit.PlaceSentences;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads the cells of one row of a schedule under its header. */
public final class RowReader {
  /** Named in place of an attribute: a cell calls for something by its mark, "MB-1". */
  public static final String MARK = "mark";

  private static final Pattern UNIT =
      Pattern.compile("units?|u/m|uom|unit of measure(?:ment)?", Pattern.CASE_INSENSITIVE);

  private static final int LONG = 500;

  private final Vocabulary vocabulary;
  private final HeadedCells headed;
  private final CellStatements cells;
  private final Dittos dittos;
  private final PlaceSentences places;

  /** As columns are headed that say where a tile is. */
  private final List<Header.Column> placed;

  public RowReader(Vocabulary vocabulary, StatementFinder finder) {
    this(vocabulary, finder, new ShortTerms(vocabulary));
  }

  public RowReader(Vocabulary vocabulary, StatementFinder finder, ShortTerms shorts) {
    this.vocabulary = vocabulary;
    this.headed = new HeadedCells(vocabulary, finder, shorts);
    this.cells = new CellStatements(vocabulary, headed);
    this.dittos = new Dittos(vocabulary);
    this.places = new PlaceSentences(vocabulary);
    this.placed =
        Stream.of("exposure", "surface")
            .map(heading -> HeadingWords.named(vocabulary, heading))
            .filter(Objects::nonNull)
            .toList();
  }

  /** What a line over the items of a bill says of the tile of each. */
  public List<Statement> described(String text, Origin origin) {
    return cells.described(text, origin);
  }

  /** The row with every ditto mark outside the tag column replaced by what it repeats. */
  public Table.Row repeated(Table.Row row, Table.Row above, int tagColumn) {
    return dittos.repeated(row, above, tagColumn);
  }

  public List<Statement> statements(
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
      if (cell != null && !cell.continued()) out.addAll(cells.leftOpen(table, cell, column));
      if (column.index() == tagColumn) continue;
      if (cell == null || cell.text().isBlank()) continue;
      if (dittos.is(cell)) {
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
      List<Statement> said =
          memo.of(column, read.text(), origin, () -> cells.of(origin, read, column));
      // What stands beside a name on a card is a sentence with it as well.
      if (!table.apart().isEmpty()) said = cells.withWords(said, origin, read, column);
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
  public interface CellFates {
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
      String unit = UNIT.matcher(other.text()).matches() ? RowWords.text(row, other.index()) : "";
      if (!unit.isEmpty()) return cell.withText(cell.text().trim() + " " + unit);
    }
    return cell;
  }

  /** A row with dittos or long texts, whose faults are to show while its document is read. */
  public boolean isUnusual(Table.Row row) {
    return row.cells().stream().anyMatch(c -> c.text().length() > LONG || dittos.is(c));
  }

  /** The columns understood that a row leaves empty, one for an attribute. */
  public List<Header.Column> blankColumns(Header header, Table.Row row) {
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
    if (headed.empty(column.attribute(), text)) return out;
    headed.attribute(out, origin, text, column, column.attribute());
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
    return TagFinder.firstTags(place) == null && !vocabulary.list("places.beside").in(place);
  }

  private static boolean isPlace(Header.Column column) {
    return column.attribute().family().equals("location");
  }
}
