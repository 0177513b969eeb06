package clearbed.read.word;

import clearbed.model.document.Table;
import clearbed.read.xml.Xml;
import java.util.ArrayList;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** The grid of a Word table element. */
final class WordTable {
  private WordTable() {}

  /** A cell element and the grid columns it covers. */
  record PlacedCell(Element element, int column, int span) {}

  /** The innermost table that a paragraph stands in, or null. */
  static Element around(Element paragraph) {
    for (Node n = paragraph.getParentNode(); n != null; n = n.getParentNode()) {
      if (n instanceof Element e && Xml.is(e, "tbl")) return e;
    }
    return null;
  }

  /** The cell element at an address such as {@code B3}, or null. */
  static Element cell(Element table, String address) {
    List<Element> rows = rows(table);
    for (int r = 1; r <= rows.size(); r++) {
      if (!address.endsWith(String.valueOf(r))) continue;
      for (PlacedCell cell : cells(rows.get(r - 1))) {
        if (Table.address(r, cell.column()).equals(address)) return cell.element();
      }
    }
    return null;
  }

  /** Every row, deleted ones too, so that the count does not hang on tracked changes. */
  static List<Element> rows(Element table) {
    List<Element> rows = new ArrayList<>();
    collect(table, "tr", rows);
    return rows;
  }

  static List<PlacedCell> cells(Element row) {
    List<Element> elements = new ArrayList<>();
    collect(row, "tc", elements);
    List<PlacedCell> cells = new ArrayList<>();
    int column = Math.max(0, Xml.val(Xml.child(row, "trPr"), "gridBefore", 0));
    for (Element element : elements) {
      int span = Math.max(1, Xml.val(Xml.child(element, "tcPr"), "gridSpan", 1));
      // No table is wider; a damaged span must not overflow the count.
      span = Math.min(span, 1000);
      cells.add(new PlacedCell(element, column, span));
      column += span;
    }
    return cells;
  }

  private static void collect(Element parent, String name, List<Element> found) {
    for (Element e : Xml.children(parent)) {
      if (Xml.is(e, name)) found.add(e);
      else if (!Xml.is(e, "tbl") && !Xml.is(e, "p") && !Xml.is(e, "Fallback")) {
        collect(e, name, found);
      }
    }
  }
}
