package clearbed.corpus;

import clearbed.samples.Clause;
import clearbed.samples.Outline;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;

/** The clauses of an outline: marks edited, marks taken off. */
final class Clauses {
  private Clauses() {}

  /** The outline with every statement passed through the edit. */
  static Outline edit(Outline outline, Set<String> glass, UnaryOperator<Statement> edit) {
    List<Clause> out = new ArrayList<>();
    for (Clause clause : outline.clauses()) {
      out.add(
          clause.isTable()
              ? clause.withTable(table(clause.table(), glass, edit))
              : clause.withText(Spans.edit(clause.text(), glass, edit)));
    }
    return outline.withClauses(out);
  }

  private static List<List<String>> table(
      List<List<String>> rows, Set<String> glass, UnaryOperator<Statement> edit) {
    List<String> labels = rows.get(0).stream().map(Spans::label).toList();
    List<List<String>> out = new ArrayList<>();
    out.add(rows.get(0));
    for (List<String> row : rows.subList(1, rows.size())) {
      out.add(cells(Rows.edit(row, labels, glass, edit), glass, edit));
    }
    return out;
  }

  /** A table of materials has statements marked within its cells. */
  private static List<String> cells(
      List<String> row, Set<String> glass, UnaryOperator<Statement> edit) {
    UnaryOperator<Statement> asCell =
        words -> edit.apply(new Statement(words.label(), words.tags(), words.text(), true));
    return row.stream().map(cell -> Spans.edit(cell, glass, asCell)).toList();
  }

  /** The outline as rendered: no marks, no clause and no heading that an edit left empty. */
  static Outline stripped(Outline outline) {
    List<Clause> out = new ArrayList<>();
    for (Clause clause : outline.clauses()) {
      if (clause.isTable()) {
        out.add(clause.withTable(stripped(clause.table())));
      } else {
        String words = Spans.strip(clause.text());
        if (words.matches(".*\\w.*")) out.add(clause.withText(words));
      }
    }
    return outline.withClauses(withoutEmptyHeadings(out));
  }

  /** The words of each clause and table, as rendered. */
  static List<String> words(Outline outline) {
    return stripped(outline).clauses().stream()
        .map(clause -> clause.isTable() ? clause.table().toString() : clause.text())
        .toList();
  }

  private static List<List<String>> stripped(List<List<String>> rows) {
    return rows.stream().map(row -> row.stream().map(Spans::strip).toList()).toList();
  }

  private static List<Clause> withoutEmptyHeadings(List<Clause> clauses) {
    List<Clause> out = new ArrayList<>();
    for (int i = 0; i < clauses.size(); i++) {
      int depth = clauses.get(i).depth();
      boolean last = i + 1 == clauses.size();
      boolean empty = depth == 1 && (last || clauses.get(i + 1).depth() <= 1);
      if (!empty) out.add(clauses.get(i));
    }
    return out;
  }
}
