package clearbed.recognise;

import clearbed.model.Origin;
import java.util.List;

/**
 * A specification section, or the notes of one document or sheet.
 *
 * @param number as people cite it: {@code 09 30 00}; empty for notes
 * @param article true when it governs tile work (its clauses rank above general notes)
 * @param notes true for notes on a sheet or in a document that is no specification section
 */
public record Section(
    String number,
    String title,
    Origin origin,
    boolean article,
    boolean notes,
    List<Clause> clauses) {
  public Section {
    clauses = List.copyOf(clauses);
  }

  /** The section in words. */
  public String name() {
    if (notes) return "notes in " + origin.document();
    return number.isEmpty() ? title : "section " + number;
  }
}
