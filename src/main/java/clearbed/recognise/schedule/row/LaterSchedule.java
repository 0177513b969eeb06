package clearbed.recognise.schedule.row;

import clearbed.model.document.Origin;
import clearbed.model.document.Placed;
import clearbed.model.document.Table;
import clearbed.model.document.ThinList;
import clearbed.model.value.Unit;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/**
 * A schedule whose table is gone, and whose rows are read when somebody asks what they state: most
 * rows that do not say whether they are glass tile never come to be an entry, and a bill of
 * quantities has thousands of them.
 */
public final class LaterSchedule {
  private final Table places;
  private final Header header;
  private final int tagColumn;
  private final Reading reading;
  private final Placed.Packer<Statement> packer;

  /** Reads the cells of a row under a header. */
  public interface Reading {
    List<Statement> statements(Table places, Header header, Table.Row row, int tagColumn);
  }

  /**
   * @param places the table without its rows
   */
  public LaterSchedule(
      Table places,
      Header header,
      int tagColumn,
      Reading reading,
      Placed.Packer<Statement> packer) {
    this.places = places;
    this.header = header;
    this.tagColumn = tagColumn;
    this.reading = reading;
    this.packer = packer;
  }

  /** What a row states, read when it is first asked for. */
  public List<Statement> statements(Table.Row row) {
    return ThinList.late(new LateRow(this, row));
  }

  /** A row that nobody has asked yet. */
  public record LateRow(LaterSchedule schedule, Table.Row row)
      implements Supplier<List<Statement>> {
    /** Reads it. */
    @Override
    public List<Statement> get() {
      LaterSchedule s = schedule;
      return s.packer.pack(s.reading.statements(s.places, s.header, row, s.tagColumn));
    }
  }

  /** All that it takes to make it again. */
  public record Marks(
      Origin origin,
      boolean sheet,
      boolean turned,
      int tagColumn,
      int headerRows,
      List<ColumnMarks> columns) {}

  /**
   * @param attribute by its name, or empty
   */
  record ColumnMarks(
      int index,
      String text,
      Header.Role role,
      String attribute,
      String surface,
      Unit unit,
      DecimalMark mark) {}

  public Marks marks() {
    List<ColumnMarks> columns = new ArrayList<>();
    for (Header.Column c : header.columns().values()) {
      String attribute = c.attribute() == null ? "" : c.attribute().id();
      columns.add(
          new ColumnMarks(
              c.index(), c.text(), c.role(), attribute, c.surface(), c.unit(), c.mark()));
    }
    return new Marks(
        places.origin(), places.sheet(), places.turned(), tagColumn, header.rows(), columns);
  }

  /**
   * @throws IllegalArgumentException when the vocabulary does not have an attribute
   */
  public static LaterSchedule of(
      Marks marks, Vocabulary vocabulary, Reading reading, Placed.Packer<Statement> packer) {
    Map<Integer, Header.Column> columns = new LinkedHashMap<>();
    for (ColumnMarks c : marks.columns) {
      Attribute attribute =
          c.attribute.isEmpty()
              ? null
              : vocabulary
                  .attribute(c.attribute)
                  .orElseThrow(() -> new IllegalArgumentException(c.attribute));
      columns.put(
          c.index,
          new Header.Column(c.index, c.text, c.role, attribute, c.surface, c.unit).with(c.mark));
    }
    return new LaterSchedule(
        new Table(marks.origin, List.of(), marks.sheet, marks.turned),
        new Header(columns, marks.headerRows),
        marks.tagColumn,
        reading,
        packer);
  }
}
