package clearbed.recognise.schedule.row;

import clearbed.base.Memo;
import clearbed.model.document.Origin;
import clearbed.model.value.Unit;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.DecimalMark;
import java.util.List;
import java.util.function.Supplier;

/**
 * Memo of what words state in a column of the same heading: schedules say few things, each of them
 * thousands of times.
 */
public final class CellMemo {
  /** All that the reading of a cell depends on. */
  private record Key(
      String heading,
      Header.Role role,
      String attribute,
      Unit unit,
      DecimalMark mark,
      String words) {
    static Key of(Header.Column column, String words) {
      String attribute = column.attribute() == null ? "" : column.attribute().id();
      return new Key(column.text(), column.role(), attribute, column.unit(), column.mark(), words);
    }
  }

  private final Memo<Key, List<Statement>> known = new Memo<>(Key::words);

  /** The statements of a cell, at its own place. */
  List<Statement> of(
      Header.Column column, String text, Origin origin, Supplier<List<Statement>> reading) {
    List<Statement> found = known.get(Key.of(column, text), () -> List.copyOf(reading.get()));
    return Statement.allAt(origin, found);
  }
}
