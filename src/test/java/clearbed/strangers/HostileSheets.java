package clearbed.strangers;

import static java.nio.charset.StandardCharsets.UTF_8;

import clearbed.read.FaultCorpus;
import clearbed.read.HostileFiles;
import clearbed.strangers.Attempt.Wanted;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Spreadsheets and tables as text whose cells, places, styles or bytes are odd or drawn by lot. */
final class HostileSheets {
  private static final int DRAWN = 40;

  private static final String[] PLACES = {
    "A1",
    "B2",
    "XFD1048576",
    "XFE1",
    "A0",
    "A1048577",
    "a1",
    "1A",
    "",
    "$A$1",
    "AAAAAAA1",
    "A-1",
    "A99999999999",
    "C3"
  };
  private static final String[] TYPES = {"s", "n", "b", "e", "d", "str", "inlineStr", "x", ""};
  private static final String[] VALUES = {
    "0",
    "-1",
    "1e308",
    "1e999",
    "NaN",
    "99999999999",
    "drain",
    "#REF!",
    "",
    "2147483648",
    "6 in",
    "4e-324",
    "TRUE",
    "44000.5"
  };

  private HostileSheets() {}

  static List<Attempt> all() throws IOException {
    List<Attempt> out = new ArrayList<>();
    byte[] xlsx = FaultCorpus.sound().get("xlsx");
    sheets()
        .forEach(
            (name, sheet) ->
                out.add(
                    odd(
                        name + ".xlsx",
                        () ->
                            part(
                                xlsx,
                                "xl/worksheets/sheet1.xml",
                                HostileFiles.SHEET.formatted(sheet)))));
    parts()
        .forEach((name, part) -> out.add(odd(name + ".xlsx", () -> part(xlsx, part[0], part[1]))));
    byte[] ods = FaultCorpus.sound().get("ods");
    tables()
        .forEach(
            (name, table) ->
                out.add(
                    odd(
                        name + ".ods",
                        () ->
                            part(
                                ods,
                                "content.xml",
                                HostileFiles.ODF.formatted(
                                    "<office:spreadsheet>" + table + "</office:spreadsheet>")))));
    for (int i = 0; i < DRAWN; i++) {
      String sheet = drawnSheet(new Random(2700 + i));
      out.add(
          drawn(
              "drawn-%02d.xlsx".formatted(i),
              () -> part(xlsx, "xl/worksheets/sheet1.xml", HostileFiles.SHEET.formatted(sheet))));
    }
    return out;
  }

  private static Attempt odd(String name, Attempt.Content content) {
    return Attempt.document("odd spreadsheets", name, Wanted.ANSWER_ALONE, content);
  }

  private static Attempt drawn(String name, Attempt.Content content) {
    return Attempt.document("tables by lot", name, Wanted.ANSWER_ALONE, content);
  }

  private static byte[] part(byte[] zip, String name, String text) throws IOException {
    Map<String, byte[]> parts = Zips.parts(zip);
    parts.put(name, text.getBytes(UTF_8));
    return Zips.packed(parts);
  }

  private static String cell(String place, String words) {
    return "<c r=\"%s\" t=\"inlineStr\"><is><t>%s</t></is></c>".formatted(place, words);
  }

  private static String row(String number, String cells) {
    return "<row r=\"%s\">%s</row>".formatted(number, cells);
  }

  private static Map<String, String> sheets() {
    Map<String, String> out = new LinkedHashMap<>();
    String first = row("1", cell("A1", "Mark") + cell("B1", "Drain"));
    for (int i = 0; i < PLACES.length; i++)
      out.put("place-" + i, data(first + row("2", cell(PLACES[i], "Gutter"))));
    for (String number : List.of("0", "-1", "1048577", "99999999999", "x", ""))
      out.put("row-" + number, data(first + row(number, cell("A2", "Gutter"))));
    out.put("corner", data(first + row("1048576", cell("XFD1048576", "Gutter"))));
    out.put("rows-backwards", data(row("9", cell("A9", "Gutter")) + first));
    out.put("rows-twice", data((first + row("2", cell("A2", "Gutter"))).repeat(500)));
    out.put("cells-twice", data(row("1", cell("A1", "Gutter").repeat(50_000))));
    StringBuilder diagonal = new StringBuilder();
    StringBuilder sparse = new StringBuilder();
    for (int i = 1; i <= 16_000; i += 8) diagonal.append(row("" + i, cell(column(i) + i, "drain")));
    for (int i = 1; i <= 1_048_000; i += 500) sparse.append(row("" + i, cell("XFD" + i, "drain")));
    out.put("diagonal", data(diagonal.toString()));
    out.put("sparse", data(sparse.toString()));
    StringBuilder chain = new StringBuilder();
    for (int i = 1; i < 20_000; i++)
      chain.append(row("" + i, "<c r=\"A%d\"><f>A%d+1</f><v>1</v></c>".formatted(i, i + 1)));
    out.put("formula-chain", data(chain.toString()));
    out.put(
        "shared-formula-of-all",
        data(
            row(
                "1",
                "<c r=\"A1\"><f t=\"shared\" si=\"0\" ref=\"A1:XFD1048576\">A1+1</f><v>1</v></c>"
                    + "<c r=\"B1\"><f t=\"shared\" si=\"0\"/><v>2</v></c>"
                    + "<c r=\"C1\"><f t=\"shared\" si=\"99\"/></c>")));
    out.put("formula-long", data(row("1", "<c r=\"A1\"><f>" + "1+".repeat(200_000) + "1</f></c>")));
    out.put("formula-deep", data(row("1", "<c r=\"A1\"><f>" + "(".repeat(50_000) + "</f></c>")));
    StringBuilder merges = new StringBuilder();
    for (int i = 1; i <= 50_000; i++) merges.append("<mergeCell ref=\"A%d:D%d\"/>".formatted(i, i));
    out.put("merged-50000", data(first) + "<mergeCells>" + merges + "</mergeCells>");
    for (String area :
        List.of("A1:XFD1048576", "A1:A1", "B9:A1", "A1", "", "A1:", "x", "A1:ZZZZ9", "A:A", "1:1"))
      out.put(
          "merged-" + area.replace(':', '_'),
          data(first) + "<mergeCells><mergeCell ref=\"" + area + "\"/></mergeCells>");
    out.put(
        "merged-over-each-other",
        data(first)
            + "<mergeCells>"
            + "<mergeCell ref=\"A1:XFD1048576\"/>".repeat(3_000)
            + "</mergeCells>");
    out.put(
        "colours-50000",
        data(first)
            + ("<conditionalFormatting sqref=\"A1:XFD1048576\"><cfRule type=\"expression\""
                    + " priority=\"1\"><formula>A1=1</formula></cfRule></conditionalFormatting>")
                .repeat(50_000));
    out.put(
        "hidden-columns",
        "<cols><col min=\"1\" max=\"99999999\" hidden=\"1\"/></cols>" + data(first));
    out.put("columns-backwards", "<cols><col min=\"9\" max=\"-1\"/></cols>" + data(first));
    out.put(
        "links",
        data(first) + "<hyperlinks>" + "<hyperlink ref=\"A1\"/>".repeat(50_000) + "</hyperlinks>");
    out.put("dimension", "<dimension ref=\"A1:XFD1048576\"/>" + data(first));
    out.put("string-beyond", data(row("1", "<c r=\"A1\" t=\"s\"><v>99999999</v></c>")));
    out.put("string-minus", data(row("1", "<c r=\"A1\" t=\"s\"><v>-1</v></c>")));
    out.put("style-beyond", data(row("1", "<c r=\"A1\" s=\"99999999\"><v>1</v></c>")));
    out.put("date-beyond", data(row("1", "<c r=\"A1\" t=\"d\"><v>9999999-99-99</v></c>")));
    out.put("escaped", data(row("1", cell("A1", "_x001B_[2J_x0000__xD83D_"))));
    out.put(
        "runs",
        data(
            row(
                "1",
                "<c r=\"A1\" t=\"inlineStr\"><is>"
                    + "<r><t>d</t></r>".repeat(50_000)
                    + "</is></c>")));
    return out;
  }

  private static String data(String rows) {
    return "<sheetData>" + rows + "</sheetData>";
  }

  private static String column(int number) {
    StringBuilder out = new StringBuilder();
    for (int n = number; n > 0; n = (n - 1) / 26) out.insert(0, (char) ('A' + (n - 1) % 26));
    return out.toString();
  }

  /** Name of a part, and what is in it. */
  private static Map<String, String[]> parts() {
    Map<String, String[]> out = new LinkedHashMap<>();
    String main = " xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"";
    String r = " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\"";
    String sheet = "<sheet name=\"%s\" sheetId=\"%d\" r:id=\"rId%d\"/>";
    String book = "<workbook" + main + r + "><sheets>%s</sheets>%s</workbook>";
    String one = sheet.formatted("Drains", 1, 1);
    StringBuilder many = new StringBuilder();
    for (int i = 0; i < 3_000; i++) many.append(sheet.formatted("S" + i, i, 1));
    Map<String, String> books = new LinkedHashMap<>();
    books.put("sheets-3000", book.formatted(many, ""));
    books.put("sheet-of-nothing", book.formatted(sheet.formatted("x", 1, 999), ""));
    books.put("no-sheets", book.formatted("", ""));
    books.put("sheet-twice", book.formatted(one + one, ""));
    books.put("sheet-without-name", book.formatted(sheet.formatted("", 1, 1), ""));
    books.put("sheet-long-name", book.formatted(sheet.formatted("x".repeat(100_000), 1, 1), ""));
    books.put("sheet-name-with-signs", book.formatted(sheet.formatted("&#9;../[x]'!A1", 1, 1), ""));
    books.put(
        "names-50000",
        book.formatted(
            one,
            "<definedNames>"
                + "<definedName name=\"n\">n</definedName>".repeat(50_000)
                + "</definedNames>"));
    books.put(
        "names-dde",
        book.formatted(
            one,
            "<definedNames><definedName name=\"Print_Area\">cmd|' /C calc'!A0</definedName>"
                + "</definedNames>"));
    books.forEach((name, text) -> out.put(name, new String[] {"xl/workbook.xml", text}));
    String styles = "<styleSheet" + main + ">%s</styleSheet>";
    out.put(
        "formats-50000",
        new String[] {
          "xl/styles.xml",
          styles.formatted(
              "<numFmts>"
                  + ("<numFmt numFmtId=\"164\" formatCode=\"" + "0".repeat(200) + "\"/>")
                      .repeat(5_000)
                  + "</numFmts>")
        });
    for (String code :
        List.of(
            "[",
            "\\",
            "[$-",
            "0".repeat(5_000),
            "[h]".repeat(2_000),
            "?/?".repeat(500),
            "\"",
            "@@@@",
            "[>1e999]0",
            "yyyy".repeat(3_000)))
      out.put(
          "format-" + out.size(),
          new String[] {
            "xl/styles.xml",
            styles.formatted(
                "<numFmts><numFmt numFmtId=\"164\" formatCode=\""
                    + code.replace("\"", "&quot;").replace(">", "&gt;")
                    + "\"/></numFmts><cellXfs>"
                    + "<xf numFmtId=\"164\"/>".repeat(20)
                    + "</cellXfs>")
          });
    out.put("strings-none", new String[] {"xl/sharedStrings.xml", "<sst" + main + "/>"});
    return out;
  }

  private static Map<String, String> tables() {
    Map<String, String> out = new LinkedHashMap<>();
    for (String count :
        List.of("2147483647", "2147483648", "-1", "0", "x", "99999999999999999999")) {
      out.put("columns-" + count, table(repeated("row", "1", repeated("cell", count, "drain"))));
      out.put("rows-" + count, table(repeated("row", count, repeated("cell", "1", "drain"))));
      out.put("both-" + count, table(repeated("row", count, repeated("cell", count, "drain"))));
      out.put("empty-" + count, table(repeated("row", count, repeated("cell", count, ""))));
    }
    out.put(
        "spanned",
        table(
            "<table:table-row><table:table-cell table:number-columns-spanned=\"2147483647\""
                + " table:number-rows-spanned=\"2147483647\"><text:p>drain</text:p>"
                + "</table:table-cell></table:table-row>"));
    out.put(
        "groups",
        table("<table:table-row-group>".repeat(2_000) + "</table:table-row-group>".repeat(2_000)));
    out.put("tables-3000", table("").repeat(3_000));
    return out;
  }

  private static String table(String rows) {
    return "<table:table table:name=\"t\">" + rows + "</table:table>";
  }

  private static String repeated(String what, String count, String inside) {
    boolean cell = what.equals("cell");
    String words = inside.isEmpty() ? "" : "<text:p>" + inside + "</text:p>";
    return "<table:table-%s table:number-%s-repeated=\"%s\">%s</table:table-%s>"
        .formatted(what, cell ? "columns" : "rows", count, cell ? words : inside, what);
  }

  private static String drawnSheet(Random random) {
    StringBuilder out = new StringBuilder();
    int rows = random.nextInt(80);
    for (int i = 0; i < rows; i++) {
      StringBuilder cells = new StringBuilder();
      for (int c = random.nextInt(12); c > 0; c--) cells.append(drawnCell(random));
      out.append(
          random.nextInt(6) == 0
              ? row(VALUES[random.nextInt(VALUES.length)], cells.toString())
              : "<row>" + cells + "</row>");
    }
    return data(out.toString());
  }

  private static String drawnCell(Random random) {
    String place =
        random.nextInt(3) > 0 ? "" : " r=\"" + PLACES[random.nextInt(PLACES.length)] + "\"";
    String value = VALUES[random.nextInt(VALUES.length)];
    String inside =
        switch (random.nextInt(5)) {
          case 0 -> "<is><t>" + value + "</t></is>";
          case 1 -> "<f>" + value + "</f>";
          case 2 -> "<f>A1</f><v>" + value + "</v>";
          case 3 -> "";
          default -> "<v>" + value + "</v>";
        };
    return "<c%s t=\"%s\">%s</c>".formatted(place, TYPES[random.nextInt(TYPES.length)], inside);
  }
}
