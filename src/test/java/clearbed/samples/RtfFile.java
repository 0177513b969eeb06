package clearbed.samples;

import java.nio.charset.StandardCharsets;
import java.util.List;

/** An outline or a schedule as rich text. */
public final class RtfFile {
  private static final int CELL_TWIPS = 1500;

  private RtfFile() {}

  public static byte[] section(Outline outline) {
    StringBuilder out = start();
    if (!outline.about("number").isEmpty()) {
      paragraph(out, "\\qc\\b ", "SECTION " + outline.about("number"));
    }
    paragraph(out, "\\qc\\b ", outline.about("title"));
    paragraph(out, "\\qc ", outline.about("project"));
    List<String> labels = Numbering.of(outline).labels(outline.clauses());
    for (int i = 0; i < outline.clauses().size(); i++) {
      Clause clause = outline.clauses().get(i);
      if (clause.isTable()) table(out, clause.table());
      else clause(out, labels.get(i), clause);
    }
    return end(out);
  }

  public static byte[] schedule(Schedule schedule) {
    StringBuilder out = start();
    for (String line : schedule.titles()) paragraph(out, "\\b ", line);
    table(out, Grid.of(schedule));
    for (String line : schedule.notes()) paragraph(out, "", line);
    return end(out);
  }

  private static void clause(StringBuilder out, String label, Clause clause) {
    int indent = Math.max(0, clause.depth() - 1) * 500;
    String format = "\\li" + (indent + 500) + "\\fi-500" + (clause.depth() < 2 ? "\\b " : " ");
    paragraph(out, format, label.isEmpty() ? clause.text() : label + "\t" + clause.text());
  }

  private static void paragraph(StringBuilder out, String format, String text) {
    out.append("{\\pard").append(format.isEmpty() ? " " : format).append(escape(text));
    out.append("\\par}\n");
  }

  private static void table(StringBuilder out, List<List<String>> rows) {
    for (List<String> row : rows) {
      out.append("\\trowd\\trgaph70");
      for (int c = 1; c <= row.size(); c++) out.append("\\cellx").append(c * CELL_TWIPS);
      out.append('\n');
      for (String cell : row) out.append("\\pard\\intbl ").append(escape(cell)).append("\\cell\n");
      out.append("\\row\n");
    }
    out.append("\\pard\n");
  }

  private static StringBuilder start() {
    return new StringBuilder("{\\rtf1\\ansi\\deff0{\\fonttbl{\\f0 Arial;}}\\fs20\n");
  }

  private static byte[] end(StringBuilder out) {
    return out.append("}\n").toString().getBytes(StandardCharsets.US_ASCII);
  }

  private static String escape(String text) {
    StringBuilder out = new StringBuilder();
    for (char letter : text.toCharArray()) {
      if (letter == '\\' || letter == '{' || letter == '}') out.append('\\').append(letter);
      else if (letter == '\t') out.append("\\tab ");
      else if (letter < 128) out.append(letter);
      else out.append("\\u").append((int) letter).append('?');
    }
    return out.toString();
  }
}
