package clearbed.samples;

import java.nio.charset.StandardCharsets;
import java.util.List;

/** An outline or a schedule as a web page. */
public final class HtmlFile {
  private HtmlFile() {}

  public static byte[] section(Outline outline) {
    StringBuilder out = start(outline.about("title") + " " + outline.about("number"));
    out.append("<h1>").append(escape(outline.about("title"))).append("</h1>\n");
    out.append("<p>").append(escape(outline.about("project"))).append("</p>\n");
    List<String> labels = Numbering.of(outline).labels(outline.clauses());
    for (int i = 0; i < outline.clauses().size(); i++) {
      Clause clause = outline.clauses().get(i);
      if (clause.isTable()) table(out, clause.table());
      else clause(out, labels.get(i), clause);
    }
    return end(out);
  }

  public static byte[] schedule(Schedule schedule) {
    StringBuilder out = start(schedule.titles().isEmpty() ? "Schedule" : schedule.titles().get(0));
    for (String line : schedule.titles()) out.append("<p>").append(escape(line)).append("</p>\n");
    table(out, Grid.of(schedule));
    for (String line : schedule.notes()) out.append("<p>").append(escape(line)).append("</p>\n");
    return end(out);
  }

  private static void clause(StringBuilder out, String label, Clause clause) {
    String name = clause.depth() < 2 ? "h" + (clause.depth() + 2) : "p";
    String style =
        clause.depth() < 2 ? "" : " style=\"margin-left:" + (clause.depth() - 2) * 2 + "em\"";
    String lead = label.isEmpty() ? "" : label + (clause.depth() < 2 ? " " : "&nbsp;&nbsp;");
    out.append('<').append(name).append(style).append('>');
    out.append(lead).append(escape(clause.text()));
    out.append("</").append(name).append(">\n");
  }

  private static void table(StringBuilder out, List<List<String>> rows) {
    out.append("<table border=\"1\">\n");
    for (int r = 0; r < rows.size(); r++) {
      String name = r == 0 ? "th" : "td";
      out.append("<tr>");
      for (String cell : rows.get(r)) {
        out.append('<').append(name).append('>').append(escape(cell));
        out.append("</").append(name).append('>');
      }
      out.append("</tr>\n");
    }
    out.append("</table>\n");
  }

  private static StringBuilder start(String title) {
    return new StringBuilder(
            "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>")
        .append(escape(title.strip()))
        .append("</title></head><body>\n");
  }

  private static byte[] end(StringBuilder out) {
    return out.append("</body></html>\n").toString().getBytes(StandardCharsets.UTF_8);
  }

  static String escape(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
