package clearbed.report.workbook.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.xssf.model.SharedStringsTable;
import org.apache.poi.xssf.usermodel.XSSFEvaluationWorkbook;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;

/** Sheets as different spreadsheet programs write them (ECMA-376 part 1, 18.3.1). */
class SheetStreamTest {
  private static final String HEAD =
      "<x:worksheet xmlns:x='http://schemas.openxmlformats.org/spreadsheetml/2006/main'>"
          + "<x:sheetData>";

  private static List<SheetRow> read(String rows) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      book.createSheet("Calculations");
      var day = book.createCellStyle();
      day.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd"));
      SharedStringsTable strings = new SharedStringsTable();
      strings.addSharedStringItem(new XSSFRichTextString("kept in common"));
      byte[] xml = (HEAD + rows + "</x:sheetData></x:worksheet>").getBytes(StandardCharsets.UTF_8);
      List<SheetRow> found = new ArrayList<>();
      try (SheetStream stream =
          new SheetStream(
              new ByteArrayInputStream(xml),
              strings,
              book.getStylesSource(),
              XSSFEvaluationWorkbook.create(book))) {
        for (SheetRow row = stream.next(); row != null; row = stream.next()) found.add(row);
      }
      return found;
    }
  }

  private static List<String> shown(SheetRow row) {
    return row.cells().stream().map(cell -> cell.column() + " " + cell.shown()).toList();
  }

  @Test
  void texts_numbers_and_dates_are_read_as_people_see_them() throws IOException {
    List<SheetRow> rows =
        read(
            "<x:row r='3'><x:c r='B3' t='s'><x:v>0</x:v></x:c>"
                + "<x:c r='D3' t='inlineStr'><x:is><x:r><x:t>two </x:t></x:r><x:r><x:t>runs</x:t>"
                + "</x:r><x:rPh sb='0' eb='1'><x:t>spoken</x:t></x:rPh></x:is></x:c>"
                + "<x:c r='E3'><x:v>1234567.891</x:v></x:c>"
                + "<x:c r='F3' s='1'><x:v>46086</x:v></x:c>"
                + "<x:c r='G3' s='1'><x:v>46086.5</x:v></x:c>"
                + "<x:c r='H3' t='b'><x:v>1</x:v></x:c><x:c r='I3' s='1'/></x:row>");
    assertThat(rows).hasSize(1);
    assertThat(rows.get(0).at()).isEqualTo(2);
    assertThat(shown(rows.get(0)))
        .containsExactly(
            "1 kept in common",
            "3 two runs",
            "4 1234567.891",
            "5 2026-03-05",
            "6 2026-03-05T12:00",
            "7 true");
  }

  @Test
  void a_formula_that_cells_share_reads_in_each_as_it_does_there() throws IOException {
    List<SheetRow> rows =
        read(
            "<x:row r='1'><x:c r='B1'><x:f t='shared' ref='B1:B3' si='0'>A1*$C$1</x:f></x:c></x:row>"
                + "<x:row r='2'><x:c r='B2'><x:f t='shared' si='0'/><x:v>7</x:v></x:c></x:row>");
    assertThat(shown(rows.get(1))).containsExactly("1 =A2*$C$1");
  }

  @Test
  void rows_and_cells_without_addresses_follow_each_other() throws IOException {
    List<SheetRow> rows =
        read("<x:row><x:c><x:v>1</x:v></x:c><x:c><x:v>2</x:v></x:c></x:row><x:row/>");
    assertThat(shown(rows.get(0))).containsExactly("0 1", "1 2");
  }

  @Test
  void a_sheet_that_breaks_off_is_an_error() {
    assertThatThrownBy(() -> read("<x:row r='1'><x:c")).isInstanceOf(IOException.class);
  }

  @Test
  void programs_spell_formulas_differently_and_mean_the_same() {
    CellContent ours = formula("MAX(($B$11*12*9.0E-6)/$B$13,0.26417205235814845)");
    assertThat(ours.isSame(formula("MAX( ($B$11 * 12*0.000009)/$B$13, 0.264172052358148)"), false))
        .isTrue();
    assertThat(ours.isSame(formula("MAX(($B$12*12*9.0E-6)/$B$14,0.264172052358148)"), false))
        .isFalse();
    assertThat(ours.isSame(formula("MAX(($B$12*12*9.0E-6)/$B$14,0.264172052358148)"), true))
        .isTrue();
    assertThat(formula("IF(A1>0,\"1.0\",\"b\")").isSame(formula("IF(A1>0,\"1\",\"b\")"), false))
        .isFalse();
  }

  private static CellContent formula(String text) {
    return new CellContent(1, CellContent.Type.FORMULA, text, CellContent.NO_STYLE);
  }

  @Test
  void what_was_noted_of_a_sheet_comes_back_and_a_damaged_note_is_an_error() throws IOException {
    SheetSnapshot snapshot = new SheetSnapshot();
    SheetRow row = new SheetRow(4, true, List.of(formula("A1"), CellContent.text(3, "é\n_x", -1)));
    snapshot.add(row);
    String packed = snapshot.packed();
    try (SheetRowSource rows = SheetSnapshot.rows(packed)) {
      assertThat(rows.next()).isEqualTo(row);
      assertThat(rows.next()).isNull();
    }
    assertThatThrownBy(() -> SheetSnapshot.rows("AAAA" + packed).next())
        .isInstanceOf(IOException.class);
  }
}
