package clearbed.samples;

import java.nio.charset.StandardCharsets;
import java.util.List;

/** An outline as Markdown: headings, nested lists, tables between bars. */
final class MarkdownFile {
  private MarkdownFile() {}

  static byte[] section(Outline outline) {
    StringBuilder out = new StringBuilder();
    out.append("# ").append(outline.about("title")).append("\n\n");
    out.append(outline.about("project")).append(", ").append(outline.about("date")).append('\n');
    List<String> labels = Numbering.of(outline).labels(outline.clauses());
    boolean within = false;
    for (int i = 0; i < outline.clauses().size(); i++) {
      Clause clause = outline.clauses().get(i);
      boolean item = !clause.isTable() && clause.depth() > 1;
      if (!item || !within) out.append('\n');
      within = item;
      if (clause.isTable()) table(out, clause.table());
      else clause(out, labels.get(i), clause);
    }
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void clause(StringBuilder out, String label, Clause clause) {
    int depth = clause.depth();
    out.append(depth < 2 ? "#".repeat(depth + 1) + " " : "  ".repeat(depth - 2) + "- ");
    if (!label.isEmpty()) out.append(label).append(' ');
    out.append(clause.text()).append('\n');
  }

  private static void table(StringBuilder out, List<List<String>> rows) {
    for (int r = 0; r < rows.size(); r++) {
      out.append("| ").append(String.join(" | ", rows.get(r))).append(" |\n");
      if (r == 0) out.append("|").append(" --- |".repeat(rows.get(0).size())).append('\n');
    }
  }
}
