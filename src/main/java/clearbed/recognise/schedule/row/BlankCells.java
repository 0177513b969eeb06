package clearbed.recognise.schedule.row;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The empty cells of a row by attribute. Rows have many, and nearly nobody asks where they are:
 * only their columns are kept.
 */
public final class BlankCells extends AbstractMap<String, Origin> {
  private final Table table;
  private final int row;
  private final int page;
  private final List<Header.Column> columns;

  /**
   * @param table in memory for as long as this is: best one without its rows
   * @param row number as a spreadsheet shows it
   * @param page from 1, or 0 where there are no pages
   * @param columns of one attribute each
   */
  public BlankCells(Table table, int row, int page, List<Header.Column> columns) {
    this.table = table;
    this.row = row;
    this.page = page;
    this.columns = columns;
  }

  private Origin place(Header.Column column) {
    return table.origin(new Table.Cell(column.index(), 1, false, "", "", row, page));
  }

  @Override
  public Origin get(Object attribute) {
    for (Header.Column column : columns) {
      if (column.attribute().id().equals(attribute)) return place(column);
    }
    return null;
  }

  @Override
  public Set<Entry<String, Origin>> entrySet() {
    return new AbstractSet<>() {
      @Override
      public Iterator<Entry<String, Origin>> iterator() {
        return columns.stream().map(c -> Map.entry(c.attribute().id(), place(c))).iterator();
      }

      @Override
      public int size() {
        return columns.size();
      }
    };
  }
}
