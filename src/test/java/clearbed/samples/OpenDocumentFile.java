package clearbed.samples;

import static clearbed.samples.HtmlFile.escape;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** An outline as OpenDocument text, a schedule as an OpenDocument spreadsheet. */
public final class OpenDocumentFile {
  private static final String TYPE = "application/vnd.oasis.opendocument.";
  private static final String NAME = "urn:oasis:names:tc:opendocument:xmlns:";

  private OpenDocumentFile() {}

  public static byte[] text(Outline outline) {
    StringBuilder out = new StringBuilder("<office:text>\n");
    paragraph(out, outline.about("title"));
    paragraph(out, outline.about("project"));
    List<String> labels = Numbering.of(outline).labels(outline.clauses());
    for (int i = 0; i < outline.clauses().size(); i++) {
      Clause clause = outline.clauses().get(i);
      String words = (labels.get(i) + " " + clause.text()).strip();
      if (clause.isTable()) table(out, "Table" + i, clause.table());
      else if (clause.depth() < 2) heading(out, clause.depth() + 1, words);
      else paragraph(out, words);
    }
    return archive("text", out.append("</office:text>\n").toString());
  }

  public static byte[] spreadsheet(Schedule schedule, String sheetName) {
    StringBuilder out = new StringBuilder("<office:spreadsheet>\n");
    out.append("<table:table table:name=\"").append(escape(sheetName)).append("\">\n");
    int count = schedule.columns().size();
    for (String line : schedule.titles()) spanned(out, line, count);
    for (List<String> row : Grid.of(schedule)) row(out, row);
    for (String line : schedule.notes()) row(out, List.of(line));
    out.append("</table:table>\n");
    return archive("spreadsheet", out.append("</office:spreadsheet>\n").toString());
  }

  private static void table(StringBuilder out, String name, List<List<String>> rows) {
    out.append("<table:table table:name=\"").append(name).append("\">\n");
    rows.forEach(row -> row(out, row));
    out.append("</table:table>\n");
  }

  private static void row(StringBuilder out, List<String> cells) {
    out.append("<table:table-row>");
    for (String cell : cells) {
      out.append("<table:table-cell office:value-type=\"string\">");
      paragraph(out, cell);
      out.append("</table:table-cell>");
    }
    out.append("</table:table-row>\n");
  }

  private static void spanned(StringBuilder out, String text, int count) {
    out.append("<table:table-row><table:table-cell office:value-type=\"string\"");
    out.append(" table:number-columns-spanned=\"").append(count).append("\">");
    paragraph(out, text);
    out.append("</table:table-cell>");
    if (count > 1) {
      out.append("<table:covered-table-cell table:number-columns-repeated=\"");
      out.append(count - 1).append("\"/>");
    }
    out.append("</table:table-row>\n");
  }

  private static void heading(StringBuilder out, int level, String text) {
    out.append("<text:h text:outline-level=\"").append(level).append("\">");
    out.append(escape(text)).append("</text:h>\n");
  }

  private static void paragraph(StringBuilder out, String text) {
    out.append("<text:p>").append(escape(text)).append("</text:p>");
  }

  private static byte[] archive(String kind, String body) {
    String start = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    String content =
        start
            + "<office:document-content office:version=\"1.3\""
            + space("office")
            + space("text")
            + space("table")
            + "><office:body>\n"
            + body
            + "</office:body></office:document-content>\n";
    String manifest =
        start
            + "<manifest:manifest manifest:version=\"1.3\""
            + space("manifest")
            + "><manifest:file-entry manifest:full-path=\"/\" manifest:media-type=\""
            + TYPE
            + kind
            + "\"/><manifest:file-entry manifest:full-path=\"content.xml\""
            + " manifest:media-type=\"text/xml\"/></manifest:manifest>\n";
    Map<String, byte[]> entries = new LinkedHashMap<>();
    entries.put("mimetype", (TYPE + kind).getBytes(StandardCharsets.US_ASCII));
    entries.put("content.xml", content.getBytes(StandardCharsets.UTF_8));
    entries.put("META-INF/manifest.xml", manifest.getBytes(StandardCharsets.UTF_8));
    return FixedZip.of(entries);
  }

  private static String space(String prefix) {
    return " xmlns:" + prefix + "=\"" + NAME + prefix + ":1.0\"";
  }
}
