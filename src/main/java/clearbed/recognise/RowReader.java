package clearbed.recognise;

import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Document;
import clearbed.model.Origin;
import clearbed.model.Table;
import clearbed.model.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the cells of one row of a schedule under its header. */
final class RowReader {
  /** Type, grade, class or use in the words of ASTM C920, whatever the column is called. */
  private static final Pattern DESIGNATION =
      Pattern.compile(
          "(?:(?:type [SM]|grade (?:NS|P)|class \\d{2,3}(?:/\\d{2})?|use (?:NT|T|I|M|G|A|O)),?\\s*)+",
          Pattern.CASE_INSENSITIVE);

  private static final int LONG = 500;

  private final Vocabulary vocabulary;
  private final StatementFinder finder;

  RowReader(Vocabulary vocabulary, StatementFinder finder) {
    this.vocabulary = vocabulary;
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
        words.add(text(row, column.index()));
    }
    if (words.stream().allMatch(String::isBlank)) {
      header.all(Header.Role.OTHER).forEach(c -> words.add(text(row, c.index())));
    }
    return String.join(" | ", words.stream().filter(w -> !w.isBlank()).toList());
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
      List<Document.Gap> gaps) {
    List<Statement> out = new ArrayList<>();
    for (Header.Column column : header.columns().values()) {
      if (column.index() == tagColumn) continue;
      Table.Cell cell = row.at(column.index());
      if (cell == null || cell.text().isBlank()) continue;
      if (ditto(cell)) {
        cell = above == null ? null : above.at(column.index());
        if (cell == null) {
          gaps.add(
              new Document.Gap(
                  table.origin(row.at(column.index())),
                  "repeats the cell above, but there is none"));
          continue;
        }
      }
      Origin origin = table.origin(cell);
      Table.Cell read = cell;
      if (cell.remark().isBlank()) {
        out.addAll(memo.of(column, cell.text(), origin, () -> cell(origin, read, column)));
      } else {
        out.addAll(cell(origin, read, column));
      }
    }
    return out;
  }

  /** The row with every ditto mark outside the tag column replaced by what it repeats. */
  Table.Row repeated(Table.Row row, Table.Row above, int tagColumn) {
    if (above == null || row.cells().stream().noneMatch(this::ditto)) return row;
    List<Table.Cell> cells = new ArrayList<>();
    for (Table.Cell cell : row.cells()) {
      Table.Cell from = above.at(cell.column());
      boolean repeats = cell.column() != tagColumn && ditto(cell) && from != null;
      cells.add(
          repeats
              ? new Table.Cell(
                  cell.column(),
                  cell.columnSpan(),
                  false,
                  from.text(),
                  from.remark(),
                  from.firstRow(),
                  from.page())
              : cell);
    }
    return new Table.Row(row.number(), cells, row.hidden());
  }

  /** A row with dittos or long texts, whose faults are to show while its document is read. */
  boolean isUnusual(Table.Row row) {
    return row.cells().stream().anyMatch(c -> c.text().length() > LONG || ditto(c));
  }

  private boolean ditto(Table.Cell cell) {
    return vocabulary.list("ditto").matches(PlainText.of(cell.text()).trim());
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
  List<Statement> property(Header.Column column, String value, Origin origin) {
    List<Statement> out = new ArrayList<>();
    String text = PlainText.of(value).trim();
    if (empty(column.attribute(), text)) return out;
    attribute(out, origin, text, column.attribute(), column.unit());
    out.removeIf(
        s ->
            s.content() instanceof Content.Words
                && column.attribute().kind() != Attribute.Kind.WORDS);
    return out;
  }

  private List<Statement> cell(Origin origin, Table.Cell cell, Header.Column column) {
    List<Statement> out = new ArrayList<>();
    String text = PlainText.of(cell.text()).trim();
    Attribute attribute = meant(column, text);
    if (DESIGNATION.matcher(text).matches()) {
      out.addAll(free(finder.find(text, origin, Context.running("sealant", Set.of(), false))));
    } else if (attribute == null) {
      boolean material = column.describes();
      String family = material ? "tile" : finder.familyIn(column.text());
      out.addAll(free(finder.find(text, origin, Context.running(family, Set.of(), material))));
    } else if (attribute.id().equals("notes")) {
      out.addAll(free(finder.find(text, origin, Context.running("", Set.of(), true))));
    } else if (!empty(attribute, text)) {
      attribute(out, origin, text, attribute, column.unit());
    }
    if (!cell.remark().isBlank())
      out.addAll(free(finder.find(cell.remark(), origin, Context.running("", Set.of(), true))));
    return out;
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
    return vocabulary
        .attribute("location.surface")
        .filter(surface -> surface.isTerm(text))
        .orElse(attribute);
  }

  private void attribute(
      List<Statement> out, Origin origin, String text, Attribute headed, Unit headerUnit) {
    String unit = unitSpelling(headerUnit);
    boolean bare = !unit.isEmpty() && Quantities.find(text).isEmpty() && text.matches(".*\\d.*");
    String read = bare ? withUnit(text, unit) : text;
    Attribute attribute = measured(headed, read);
    List<Statement> found = new ArrayList<>();
    if (attribute.kind() == Attribute.Kind.SIZE) {
      Quantities.size(text, headerUnit)
          .ifPresent(
              s -> found.add(new Statement(attribute.id(), s, false, text, origin, Limits.NONE)));
    }
    for (Statement s : free(finder.find(read, origin, Context.column(attribute)))) {
      boolean again =
          attribute.kind() == Attribute.Kind.SIZE
              && s.attribute().equals(attribute.id())
              && !found.isEmpty();
      if (!again) found.add(asWritten(s, text));
    }
    boolean said = found.stream().anyMatch(s -> says(attribute, s));
    if (!said)
      found.add(
          new Statement(attribute.id(), new Content.Words(text), false, text, origin, Limits.NONE));
    out.addAll(found);
  }

  private boolean says(Attribute column, Statement s) {
    return s.attribute().equals(column.id())
        || vocabulary.attribute(s.attribute()).filter(column::mayGive).isPresent();
  }

  /** A length under "movement joint" is a width, whether the header names the unit or the cell. */
  private Attribute measured(Attribute attribute, String text) {
    if (attribute.kind() != Attribute.Kind.STANDARD) return attribute;
    return Quantities.parse(text, Dimension.LENGTH)
        .map(amount -> Header.fitting(vocabulary, attribute, amount.low().unit()))
        .orElse(attribute);
  }

  private static Statement asWritten(Statement s, String text) {
    return new Statement(s.attribute(), s.content(), s.excluded(), text, s.origin(), s.limits());
  }

  /** A row is about its own tile: places and kinds named in its cells limit nothing. */
  private static List<Statement> free(List<Statement> statements) {
    return statements.stream().map(s -> s.withLimits(Limits.NONE)).toList();
  }

  private static String withUnit(String text, String unit) {
    return text.replaceAll(
        "(" + Numbers.PATTERN + ")(?!.*" + Numbers.PATTERN + ")",
        "$1 " + Matcher.quoteReplacement(unit));
  }

  private static String unitSpelling(Unit unit) {
    return unit == null ? "" : unit.symbol().replace("²", "2");
  }

  private static String text(Table.Row row, int column) {
    Table.Cell cell = row.at(column);
    return cell == null ? "" : PlainText.of(cell.text()).trim();
  }
}
