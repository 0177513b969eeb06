package clearbed.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A section or a sheet of notes before it is rendered.
 *
 * <p>Written as text: {@code @key value} lines first, then {@code # part}, {@code ## article},
 * {@code - clause}, {@code -- sub-clause} and so on, {@code | cell | cell} for table rows; indented
 * lines continue the one above.
 *
 * @param about project, number, title, date, scheme
 */
public record Outline(Map<String, String> about, List<Clause> clauses) {
  private static final Pattern CLAUSE = Pattern.compile("(#{1,2}|-{1,4})\\s+(.*)");

  public Outline {
    about = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(about));
    clauses = List.copyOf(clauses);
  }

  public Outline withClauses(List<Clause> other) {
    return new Outline(about, other);
  }

  public String about(String key) {
    return about.getOrDefault(key, "");
  }

  /** Reads the notation above. */
  public static Outline parse(String source) {
    Map<String, String> about = new LinkedHashMap<>();
    List<Clause> clauses = new ArrayList<>();
    for (String line : joined(source)) {
      if (line.startsWith("@")) {
        String[] pair = line.substring(1).split("\\s+", 2);
        about.merge(pair[0], pair.length > 1 ? pair[1] : "", (a, b) -> a + "\n" + b);
      } else if (line.startsWith("|")) {
        addRow(clauses, line);
      } else {
        clauses.add(clause(line));
      }
    }
    return new Outline(about, clauses);
  }

  private static Clause clause(String line) {
    Matcher match = CLAUSE.matcher(line);
    if (!match.matches()) throw new IllegalArgumentException("not a clause: " + line);
    String mark = match.group(1);
    int depth = mark.startsWith("#") ? mark.length() - 1 : mark.length() + 1;
    return new Clause(depth, match.group(2).strip(), List.of());
  }

  /** A row continues the table above it, or starts one. */
  private static void addRow(List<Clause> clauses, String line) {
    List<String> cells = cells(line);
    Clause last = clauses.isEmpty() ? null : clauses.get(clauses.size() - 1);
    if (last != null && last.isTable()) {
      List<List<String>> rows = new ArrayList<>(last.table());
      rows.add(cells);
      clauses.set(clauses.size() - 1, last.withTable(rows));
    } else {
      clauses.add(new Clause(2, "", List.of(cells)));
    }
  }

  static List<String> cells(String line) {
    String inner = line.strip().replaceFirst("^\\|", "").replaceFirst("\\|$", "");
    return Arrays.stream(inner.split("\\|", -1)).map(String::strip).toList();
  }

  private static List<String> joined(String source) {
    List<String> lines = new ArrayList<>();
    for (String line : source.lines().toList()) {
      if (line.isBlank() || line.startsWith("%")) continue;
      if (Character.isWhitespace(line.charAt(0))) {
        int last = lines.size() - 1;
        lines.set(last, lines.get(last) + " " + line.strip());
      } else {
        lines.add(line.strip());
      }
    }
    return lines;
  }
}
