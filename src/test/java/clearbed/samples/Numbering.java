package clearbed.samples;

import java.util.ArrayList;
import java.util.List;

/** How the clauses of an outline are numbered. */
public enum Numbering {
  /** PART 1, 1.1, A., 1., a. */
  THREE_PART,
  /** 1, 1.1, 1.1.1: the British and ISO manner. */
  DECIMAL,
  /** Headings without numbers; notes 1., 2., 3. through the whole sheet. */
  NOTES,
  /** No numbers at all: a short-form specification. */
  NONE;

  /** The scheme that the outline asks for; three-part when it does not say. */
  public static Numbering of(Outline outline) {
    return switch (outline.about("scheme")) {
      case "decimal" -> DECIMAL;
      case "notes" -> NOTES;
      case "none" -> NONE;
      default -> THREE_PART;
    };
  }

  /** The number of every clause, in order; empty for tables and unnumbered clauses. */
  public List<String> labels(List<Clause> clauses) {
    int[] counts = new int[8];
    int notes = 0;
    List<String> out = new ArrayList<>();
    for (Clause clause : clauses) {
      if (clause.isTable()) {
        out.add("");
        continue;
      }
      counts[clause.depth()]++;
      for (int deeper = clause.depth() + 1; deeper < counts.length; deeper++) counts[deeper] = 0;
      if (clause.depth() == 2) notes++;
      out.add(label(clause.depth(), counts, notes));
    }
    return out;
  }

  private String label(int depth, int[] counts, int notes) {
    return switch (this) {
      case NONE -> "";
      case NOTES -> notesLabel(depth, counts, notes);
      case DECIMAL -> decimal(depth, counts);
      case THREE_PART -> threePart(depth, counts);
    };
  }

  private static String notesLabel(int depth, int[] counts, int notes) {
    if (depth < 2) return "";
    return depth == 2 ? notes + "." : letter(counts[depth], 'a') + ".";
  }

  private static String decimal(int depth, int[] counts) {
    StringBuilder out = new StringBuilder();
    for (int level = 0; level <= depth; level++) {
      if (level > 0) out.append('.');
      out.append(Math.max(counts[level], level == 0 ? 1 : counts[level]));
    }
    return out.toString();
  }

  private static String threePart(int depth, int[] counts) {
    return switch (depth) {
      case 0 -> "PART " + counts[0] + " -";
      case 1 -> counts[0] + "." + counts[1];
      case 2 -> letter(counts[2], 'A') + ".";
      case 3 -> counts[3] + ".";
      default -> letter(counts[depth], 'a') + ".";
    };
  }

  private static char letter(int count, char first) {
    return (char) (first + count - 1);
  }
}
