package clearbed.report.workbook.typed;

import clearbed.report.wording.Phrasing;
import clearbed.report.workbook.layout.SheetRowSource;
import clearbed.report.workbook.layout.SheetSnapshot;
import clearbed.report.workbook.layout.SheetStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.xssf.eventusermodel.ReadOnlySharedStringsTable;
import org.apache.poi.xssf.eventusermodel.XSSFReader;
import org.apache.poi.xssf.model.SharedStrings;
import org.apache.poi.xssf.model.StylesTable;
import org.apache.poi.xssf.usermodel.XSSFEvaluationWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.xml.sax.SAXException;

/** What people typed on the sheets of an earlier workbook that each issue writes anew. */
public final class TypedCells {
  private final Map<String, TypedSheet> sheets = new LinkedHashMap<>();
  private final Set<String> unknown = new LinkedHashSet<>();

  private TypedCells() {}

  static TypedCells none() {
    return new TypedCells();
  }

  /**
   * Compares the sheets with what the issue noted of them.
   *
   * @param ledger the same workbook with the rows of its hidden sheet
   * @throws IOException when the workbook cannot be read
   */
  static TypedCells of(byte[] workbook, XSSFWorkbook ledger) throws IOException {
    TypedCells typed = new TypedCells();
    List<TypedCell> strange = Ledger.strange(ledger);
    if (!strange.isEmpty()) typed.sheets.put(Ledger.SHEET, new TypedSheet(strange, 0));
    Map<String, String> snapshots = Ledger.snapshots(ledger);
    XSSFEvaluationWorkbook names = XSSFEvaluationWorkbook.create(ledger);
    try (OPCPackage file = OPCPackage.open(new ByteArrayInputStream(workbook))) {
      XSSFReader reader = new XSSFReader(file);
      SharedStrings strings = new ReadOnlySharedStringsTable(file);
      StylesTable styles = reader.getStylesTable();
      XSSFReader.SheetIterator parts = (XSSFReader.SheetIterator) reader.getSheetsData();
      while (parts.hasNext()) {
        try (InputStream part = parts.next()) {
          String name = BookSheets.renewed(parts.getSheetName());
          if (name == null) continue;
          SheetRowSource rows = new SheetStream(part, strings, styles, names);
          typed.compare(name, snapshots.get(name), rows);
        }
      }
    } catch (OpenXML4JException | SAXException damaged) {
      throw new IOException("the earlier workbook is damaged: " + damaged.getMessage(), damaged);
    }
    return typed;
  }

  private void compare(String name, String snapshot, SheetRowSource rows) throws IOException {
    if (snapshot == null) {
      if (rows.next() != null) unknown.add(name);
      return;
    }
    SheetComparison comparison = new SheetComparison(name);
    try {
      List<TypedCell> found = comparison.find(() -> SheetSnapshot.rows(snapshot), rows);
      sheets.put(name, new TypedSheet(found, comparison.width()));
    } catch (SheetComparison.TooMuchTyped tooMuch) {
      throw tooMuch;
    } catch (IOException notWhole) {
      unknown.add(name);
    }
  }

  public TypedSheet of(String sheet) {
    return sheets.getOrDefault(sheet, TypedSheet.none());
  }

  /**
   * Sheets of which it is not known what was ours: the workbook is of an older program, or somebody
   * took the hidden sheet away.
   */
  public Set<String> unknown() {
    return unknown;
  }

  /** What has no place in the new workbook. */
  public List<TypedSheet.AsideCell> asides() {
    List<TypedSheet.AsideCell> all = new ArrayList<>();
    sheets.values().forEach(sheet -> all.addAll(sheet.asides()));
    return all;
  }

  /**
   * A sentence for each sheet that people typed on.
   *
   * @param whole names that sheets are kept whole under
   */
  public List<String> remarks(Map<String, String> whole) {
    List<String> remarks = new ArrayList<>();
    sheets.forEach(
        (name, sheet) -> {
          if (sheet.count() == 0) return;
          remarks.add(
              "Sheet %s: what was typed there (%s) is kept, at its row or, with its old address, on the sheet %s."
                  .formatted(name, Phrasing.count(sheet.count(), "cell"), SetAsideSheet.SHEET));
        });
    whole.forEach(
        (name, kept) ->
            remarks.add(
                "Sheet %s: what of it was typed cannot be told; it is kept whole as \"%s\"."
                    .formatted(name, kept)));
    return remarks;
  }
}
