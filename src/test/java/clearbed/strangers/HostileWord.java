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

/** Word and OpenDocument texts whose markup is odd, absurd or drawn by lot. */
final class HostileWord {
  private static final int DRAWN = 60;

  private static final String[] BLOCKS = {
    "p", "tbl", "tr", "tc", "sdt", "sdtContent", "customXml", "ins", "del", "moveFrom", "moveTo"
  };
  private static final String[] RUNS = {
    "r", "hyperlink", "fldSimple", "smartTag", "ins", "del", "sdt", "sdtContent", "ruby", "rt"
  };
  private static final String[] LEAVES = {
    "t",
    "delText",
    "instrText",
    "tab",
    "br",
    "noBreakHyphen",
    "sym",
    "fldChar",
    "footnoteReference",
    "commentReference",
    "annotationRef",
    "pPr",
    "rPr",
    "numPr",
    "tblPr",
    "tblGrid",
    "gridSpan",
    "vMerge",
    "sectPr",
    "object",
    "drawing",
    "pict",
    "altChunk",
    "subDoc",
    "bookmarkStart",
    "bookmarkEnd"
  };
  private static final String[] VALUES = {
    "",
    "0",
    "-1",
    "1",
    "9",
    "2147483648",
    "99999999999",
    "1e9",
    "begin",
    "separate",
    "end",
    "x",
    "NaN",
    "true",
    "rId1",
    "rId999",
    "&#xFFFD;",
    "continue",
    "restart"
  };

  private HostileWord() {}

  static List<Attempt> all() throws IOException {
    List<Attempt> out = new ArrayList<>();
    byte[] docx = FaultCorpus.sound().get("docx");
    bodies()
        .forEach(
            (name, body) ->
                out.add(
                    document(name + ".docx", () -> part(docx, "word/document.xml", word(body)))));
    HostileWordParts.all()
        .forEach(
            (name, part) -> out.add(document(name + ".docx", () -> part(docx, part[0], part[1]))));
    byte[] odt = FaultCorpus.sound().get("odt");
    texts()
        .forEach(
            (name, text) ->
                out.add(
                    document(
                        name + ".odt",
                        () -> part(odt, "content.xml", HostileFiles.ODF.formatted(text)))));
    for (int i = 0; i < DRAWN; i++) {
      Random random = new Random(2600 + i);
      String body = drawn(random);
      out.add(
          Attempt.document(
              "Word by lot",
              "drawn-%02d.docx".formatted(i),
              Wanted.ANSWER_ALONE,
              () -> part(docx, "word/document.xml", word(body))));
    }
    return out;
  }

  private static Attempt document(String name, Attempt.Content content) {
    return Attempt.document("odd Word and OpenDocument texts", name, Wanted.ANSWER_ALONE, content);
  }

  private static byte[] part(byte[] zip, String name, String text) throws IOException {
    Map<String, byte[]> parts = Zips.parts(zip);
    parts.put(name, text.getBytes(UTF_8));
    return Zips.packed(parts);
  }

  private static String word(String body) {
    return "<w:document xmlns:w=\"http://schemas.openxmlformats.org/wordprocessingml/2006/main\""
        + " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\">"
        + "<w:body>"
        + body
        + "</w:body></w:document>";
  }

  private static String paragraph(String inside) {
    return "<w:p>" + inside + "</w:p>";
  }

  private static String text(String words) {
    return "<w:r><w:t>" + words + "</w:t></w:r>";
  }

  private static Map<String, String> bodies() {
    Map<String, String> out = new LinkedHashMap<>();
    String drain = text("Lay pipe to falls.");
    String cell = "<w:tc>" + paragraph(drain) + "</w:tc>";
    String row = "<w:tr>" + cell.repeat(3) + "</w:tr>";
    out.put("tables-in-tables-60", nested("<w:tbl><w:tr><w:tc>", "</w:tc></w:tr></w:tbl>", 60));
    out.put("tables-in-tables-900", nested("<w:tbl><w:tr><w:tc>", "</w:tc></w:tr></w:tbl>", 900));
    out.put("controls-900", nested("<w:sdt><w:sdtContent>", "</w:sdtContent></w:sdt>", 900));
    out.put("insertions-900", nested("<w:ins>", "</w:ins>", 900));
    out.put("span-0", spanned("0", row));
    out.put("span-minus", spanned("-5", row));
    out.put("span-huge", spanned("2147483647", row));
    out.put("span-beyond-int", spanned("99999999999", row));
    out.put("span-no-number", spanned("many", row));
    out.put(
        "merged-down-5000",
        "<w:tbl>"
            + ("<w:tr><w:tc><w:tcPr><w:vMerge/></w:tcPr>" + paragraph(drain) + "</w:tc></w:tr>")
                .repeat(5_000)
            + "</w:tbl>");
    out.put("rows-without-cells", "<w:tbl>" + "<w:tr/>".repeat(20_000) + "</w:tbl>");
    out.put("cells-2000", "<w:tbl><w:tr>" + cell.repeat(2_000) + "</w:tr></w:tbl>");
    out.put("tables-3000", ("<w:tbl>" + row + "</w:tbl>").repeat(3_000));
    out.put("grid-100000", "<w:tbl><w:tblGrid>" + "<w:gridCol/>".repeat(100_000) + "</w:tblGrid>");
    out.put("runs-of-a-letter", paragraph(text("drain ").repeat(30_000)));
    out.put("empty-paragraphs", "<w:p/>".repeat(100_000));
    out.put(
        "field-never-ends",
        paragraph("<w:r><w:fldChar w:fldCharType=\"begin\"/></w:r>" + drain).repeat(2_000));
    out.put(
        "field-ends-first",
        paragraph("<w:r><w:fldChar w:fldCharType=\"end\"/></w:r>" + drain).repeat(200));
    out.put(
        "fields-in-fields",
        paragraph(
            "<w:r><w:fldChar w:fldCharType=\"begin\"/><w:instrText>REF x</w:instrText></w:r>"
                    .repeat(3_000)
                + drain));
    out.put(
        "field-of-a-file",
        paragraph(
            "<w:fldSimple w:instr=\"INCLUDETEXT &quot;file:///etc/passwd&quot;\">"
                + drain
                + "</w:fldSimple>"));
    out.put(
        "field-dde",
        paragraph(
            "<w:r><w:fldChar w:fldCharType=\"begin\"/><w:instrText>DDEAUTO c:\\\\cmd \"/k calc\""
                + "</w:instrText><w:fldChar w:fldCharType=\"separate\"/></w:r>"
                + drain));
    out.put("chunk-elsewhere", "<w:altChunk r:id=\"rId77\"/>" + paragraph(drain));
    out.put("chunks-20000", "<w:altChunk r:id=\"rId1\"/>".repeat(20_000));
    out.put("footnotes-that-are-not", paragraph("<w:r><w:footnoteReference w:id=\"9\"/></w:r>"));
    out.put("symbols", paragraph("<w:r><w:sym w:font=\"x\" w:char=\"ZZZZ\"/></w:r>".repeat(500)));
    out.put("bookmarks", paragraph("<w:bookmarkStart w:id=\"1\" w:name=\"a\"/>".repeat(20_000)));
    out.put(
        "level-that-is-not",
        paragraph(
            "<w:pPr><w:numPr><w:ilvl w:val=\"-3\"/><w:numId w:val=\"99999999999\"/></w:numPr>"
                + "</w:pPr>"
                + drain));
    out.put("level-400", numbered("400", drain));
    out.put("level-words", numbered("first", drain));
    out.put("no-body", "</w:body><w:body>");
    out.put("a-million-marks", paragraph(text("&#8226; ".repeat(200_000))));
    out.put("combining", paragraph(text("e" + "\u0301".repeat(200_000))));
    out.put("half-a-pair", paragraph(text("&#xD83D; drain")));
    out.put("private-use", paragraph(text("\ue000\uf8ff".repeat(50_000))));
    out.put(
        "joined-without-width", paragraph(text("d\u200dr\u200da\u200di\u200dn ".repeat(9_000))));
    return out;
  }

  private static String nested(String open, String close, int deep) {
    return open.repeat(deep) + paragraph(text("drain")) + close.repeat(deep);
  }

  private static String spanned(String span, String row) {
    String cell =
        "<w:tc><w:tcPr><w:gridSpan w:val=\""
            + span
            + "\"/></w:tcPr>"
            + paragraph(text("Gutter"))
            + "</w:tc>";
    return "<w:tbl>" + row + "<w:tr>" + cell.repeat(3) + "</w:tr>" + row + "</w:tbl>";
  }

  private static String numbered(String level, String drain) {
    return paragraph(
            "<w:pPr><w:numPr><w:ilvl w:val=\""
                + level
                + "\"/><w:numId w:val=\"1\"/></w:numPr></w:pPr>"
                + drain)
        .repeat(50);
  }

  private static Map<String, String> texts() {
    Map<String, String> out = new LinkedHashMap<>();
    String p = "<text:p>Lay pipe to falls.</text:p>";
    for (String count : List.of("2147483647", "-1", "0", "1e9", "99999999999", "x")) {
      out.put(
          "blanks-" + count,
          "<office:text><text:p>a<text:s text:c=\"" + count + "\"/>b</text:p></office:text>");
      out.put(
          "repeated-" + count,
          "<office:text><table:table><table:table-row table:number-rows-repeated=\""
              + count
              + "\"><table:table-cell table:number-columns-repeated=\""
              + count
              + "\">"
              + p
              + "</table:table-cell></table:table-row></table:table></office:text>");
    }
    out.put(
        "sections-5000",
        "<office:text>"
            + "<text:section>".repeat(5_000)
            + p
            + "</text:section>".repeat(5_000)
            + "</office:text>");
    out.put(
        "lists-400",
        "<office:text>"
            + "<text:list><text:list-item>".repeat(400)
            + p
            + "</text:list-item></text:list>".repeat(400)
            + "</office:text>");
    out.put(
        "spans",
        "<office:text><text:p>"
            + "<text:span>d</text:span>".repeat(50_000)
            + "</text:p></office:text>");
    return out;
  }

  /** Elements of Word in any order and depth. */
  private static String drawn(Random random) {
    StringBuilder out = new StringBuilder();
    int many = 1 + random.nextInt(60);
    for (int i = 0; i < many; i++) block(out, random, 0);
    return out.toString();
  }

  private static void block(StringBuilder out, Random random, int depth) {
    String name = depth > 6 || random.nextInt(4) == 0 ? "p" : BLOCKS[random.nextInt(BLOCKS.length)];
    out.append("<w:").append(name).append(attribute(random)).append('>');
    int many = random.nextInt(4);
    for (int i = 0; i < many; i++) {
      if (name.equals("p") || random.nextInt(5) == 0) run(out, random, 0);
      else block(out, random, depth + 1);
    }
    out.append("</w:").append(name).append('>');
  }

  private static void run(StringBuilder out, Random random, int depth) {
    String name = depth > 3 ? "r" : RUNS[random.nextInt(RUNS.length)];
    out.append("<w:").append(name).append(attribute(random)).append('>');
    int many = random.nextInt(4);
    for (int i = 0; i < many; i++) {
      if (depth < 4 && random.nextInt(3) == 0) run(out, random, depth + 1);
      else leaf(out, random);
    }
    out.append("</w:").append(name).append('>');
  }

  private static void leaf(StringBuilder out, Random random) {
    String name = LEAVES[random.nextInt(random.nextBoolean() ? 2 : LEAVES.length)];
    out.append("<w:").append(name).append(attribute(random)).append('>');
    if (name.endsWith("t") || name.equals("instrText") || random.nextInt(9) == 0)
      out.append(
          List.of("drain ", "Bore", "6 in", "1. ", "A.", "\t", "&amp;").get(random.nextInt(7)));
    out.append("</w:").append(name).append('>');
  }

  private static String attribute(Random random) {
    if (random.nextInt(3) > 0) return "";
    String name =
        List.of("w:val", "w:id", "w:fldCharType", "w:instr", "r:id", "w:char")
            .get(random.nextInt(6));
    return " " + name + "=\"" + VALUES[random.nextInt(VALUES.length)] + "\"";
  }
}
