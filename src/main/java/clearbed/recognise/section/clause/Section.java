package clearbed.recognise.section.clause;

import clearbed.model.document.Origin;
import java.util.List;
import java.util.Set;

/**
 * A specification section, or the notes of one document or sheet.
 *
 * @param number as people cite it: {@code 09 30 00}; empty for notes
 * @param article true when it governs tile work (its clauses rank above general notes)
 * @param families parts of the work that its clauses may speak for, or {@link #ALL}. A clause that
 *     names a scheduled tile may speak for any
 * @param notes true for notes on a sheet or in a document that is no specification section
 */
public record Section(
    String number,
    String title,
    Origin origin,
    boolean article,
    boolean notes,
    Set<String> families,
    List<Clause> clauses) {
  public static final String ALL = "all";

  public Section {
    families = Set.copyOf(families);
    clauses = List.copyOf(clauses);
  }

  /** True when no part of the work is foreign to it. */
  public boolean speaksForAll() {
    return families.contains(ALL);
  }

  /** The section in words. */
  public String name() {
    if (notes) return "notes in " + origin.document();
    return number.isEmpty() ? title : "section " + number;
  }
}
