package clearbed.report.workbook.log;

import clearbed.model.report.QuestionLog;
import clearbed.report.workbook.cell.Datum;
import clearbed.report.workbook.cell.Styles;
import java.util.function.Function;

/**
 * A column of a sheet that people work in.
 *
 * @param width in characters
 * @param printed false for columns that stay out of the print area
 */
public record LogColumn(
    String header,
    int width,
    Owner owner,
    Styles.Look look,
    boolean printed,
    Function<QuestionLog.LogLine, Datum> datum) {

  /** Who may write in a column. */
  enum Owner {
    /** Written anew in every issue; what somebody typed over it is set aside. */
    STATE,
    /** Ours; what somebody typed over it is set aside before it is written anew. */
    FACT,
    /** Ours until somebody rewords it. */
    WORDING,
    /** Ours, and what people add to it. */
    SHARED,
    /** Theirs. */
    PEOPLE
  }

  boolean toFill() {
    return owner == Owner.PEOPLE;
  }
}
