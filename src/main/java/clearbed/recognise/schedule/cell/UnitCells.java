package clearbed.recognise.schedule.cell;

import clearbed.model.document.Table;
import clearbed.model.value.Unit;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import java.util.List;
import java.util.regex.Pattern;

/** Cells that are a unit and no more, as "mm" or "(in)" below a heading. */
public final class UnitCells {
  private static final Pattern BRACKETS = Pattern.compile("^[(\\[]|[)\\]]$|^(?:±|\\+/-) ?");

  private UnitCells() {}

  /** A row of units below the headings. */
  public static boolean isUnits(Table.Row row) {
    List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
    long units = filled.stream().filter(c -> unit(c.text()) != null).count();
    return units >= 1 && units * 5 >= filled.size() * 3;
  }

  /** The unit that a text is and no more, or null. */
  public static Unit unit(String text) {
    String plain = BRACKETS.matcher(PlainText.line(text).trim()).replaceAll("");
    return plain.isEmpty() || plain.length() > 12
        ? null
        : Quantities.unitOfHeader("in, (" + plain + ")");
  }
}
