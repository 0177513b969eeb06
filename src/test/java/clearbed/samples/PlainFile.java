package clearbed.samples;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Plain text sections, and schedules as comma-separated values. */
public final class PlainFile {
  private static final int WIDTH = 78;

  private PlainFile() {}

  /** A section as typed text with hanging indents, lines of at most 78 characters. */
  public static byte[] text(Outline outline) {
    StringBuilder out = new StringBuilder();
    List<String> labels = Numbering.of(outline).labels(outline.clauses());
    if (!outline.about("number").isEmpty()) {
      out.append("SECTION ").append(outline.about("number")).append('\n');
    }
    out.append(outline.about("title")).append('\n');
    out.append(outline.about("project")).append("   ").append(outline.about("date")).append('\n');
    for (int i = 0; i < outline.clauses().size(); i++) {
      Clause clause = outline.clauses().get(i);
      if (clause.isTable()) table(out, clause.table());
      else clause(out, labels.get(i), clause);
    }
    if (!outline.about("number").isEmpty()) {
      out.append("\nEND OF SECTION ").append(outline.about("number")).append('\n');
    }
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void clause(StringBuilder out, String label, Clause clause) {
    if (clause.depth() < 2) out.append('\n');
    int indent = Math.max(0, clause.depth() - 1) * 4;
    String lead = label.isEmpty() ? "" : clause.depth() < 2 ? label + " " : pad(label, 4);
    int hang = indent + (clause.depth() < 2 ? 0 : lead.length());
    StringBuilder line = new StringBuilder(" ".repeat(indent)).append(lead);
    boolean first = true;
    for (String word : clause.text().split(" ")) {
      if (!first && line.length() + 1 + word.length() > WIDTH) {
        out.append(line).append('\n');
        line = new StringBuilder(" ".repeat(hang));
        first = true;
      }
      if (!first) line.append(' ');
      line.append(word);
      first = false;
    }
    out.append(line).append('\n');
  }

  private static void table(StringBuilder out, List<List<String>> rows) {
    List<Integer> widths = new ArrayList<>();
    for (int c = 0; c < rows.get(0).size(); c++) {
      int column = c;
      widths.add(Collections.max(rows.stream().map(row -> row.get(column).length()).toList()) + 3);
    }
    out.append('\n');
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder("        ");
      for (int c = 0; c < row.size(); c++) line.append(pad(row.get(c), widths.get(c)));
      out.append(line.toString().stripTrailing()).append('\n');
    }
    out.append('\n');
  }

  /** A schedule as a spreadsheet program saves it: title rows first, every row full width. */
  public static byte[] csv(Schedule schedule, char delimiter) {
    CSVFormat format = CSVFormat.DEFAULT.builder().setDelimiter(delimiter).get();
    StringWriter text = new StringWriter();
    int count = schedule.columns().size();
    try (CSVPrinter printer = new CSVPrinter(text, format)) {
      for (String line : schedule.titles()) printer.printRecord(wide(List.of(line), count));
      if (!schedule.titles().isEmpty()) printer.printRecord(wide(List.of(), count));
      if (schedule.hasGroups()) printer.printRecord(groups(schedule));
      printer.printRecord(schedule.columns().stream().map(Schedule.Column::heading).toList());
      for (List<String> row : schedule.rows()) printer.printRecord(wide(row, count));
      for (String line : schedule.notes()) printer.printRecord(wide(List.of(line), count));
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** A merged cell saves as its text in the first column and nothing in the others. */
  private static List<String> groups(Schedule schedule) {
    List<String> out = new ArrayList<>();
    String before = "";
    for (Schedule.Column column : schedule.columns()) {
      out.add(column.group().equals(before) ? "" : column.group());
      before = column.group();
    }
    return out;
  }

  private static List<String> wide(List<String> cells, int count) {
    List<String> out = new ArrayList<>(cells);
    while (out.size() < count) out.add("");
    return out;
  }

  private static String pad(String text, int width) {
    return text.length() >= width ? text + " " : text + " ".repeat(width - text.length());
  }
}
