package clearbed.report.workbook.layout;

import java.util.List;

/** Names of the sheets and columns that later issues find again. */
public final class Headers {
  public static final String FINDINGS = "Findings";
  public static final String QUESTIONS = "Questions";

  public static final String ID = "Id";
  public static final String LEVEL = "Level";
  public static final String STATE = "State";
  public static final String TAGS = "Tags";
  public static final String CHECK = "Check";
  public static final String MESSAGE = "What is wrong";
  public static final String FOUND = "Found";
  public static final String EXPECTED = "Expected";
  public static final String PLACE = "Place";
  public static final String OPEN = "Link";
  public static final String WORDS = "Words as written";
  public static final String QUESTION = "Question";
  public static final String CLAUSE = "Suggested clause";
  public static final String WHY = "Why it matters";
  public static final String SOURCE = "Source";
  public static final String KIND = "Kind";
  public static final String ATTRIBUTE = "Attribute";
  public static final String ASKED_IN = "Question no.";
  public static final String FIRST_SEEN = "First seen";
  public static final String LAST_SEEN = "Last seen";
  public static final String AGE = "Age in days";
  public static final String GONE_ON = "Gone on";
  public static final String REMARK = "Remark";

  public static final String NUMBER = "No.";
  public static final String WORDING = "Suggested wording";
  public static final String STATUS = "Status";
  public static final String ASKED_OF = "Asked of";
  public static final String DATE_ASKED = "Date asked";
  public static final String DUE = "Due";
  public static final String ANSWER = "Answer";
  public static final String NOTE = "Note";
  public static final String DAYS_OPEN = "Days open";
  public static final String EARLIER = "Earlier answers";

  static final List<String> OF_FINDINGS =
      List.of(
          ID,
          LEVEL,
          STATE,
          TAGS,
          CHECK,
          MESSAGE,
          FOUND,
          EXPECTED,
          PLACE,
          OPEN,
          QUESTION,
          WHY,
          WORDS,
          CLAUSE,
          SOURCE,
          KIND,
          ATTRIBUTE,
          ASKED_IN,
          FIRST_SEEN,
          LAST_SEEN,
          AGE,
          GONE_ON,
          REMARK);
  static final List<String> OF_QUESTIONS =
      List.of(
          NUMBER,
          TAGS,
          QUESTION,
          PLACE,
          OPEN,
          STATE,
          STATUS,
          ANSWER,
          ASKED_OF,
          DATE_ASKED,
          DUE,
          DAYS_OPEN,
          NOTE,
          WHY,
          WORDING,
          EARLIER,
          LEVEL,
          ID);

  /** Stands in the column State for a finding that a rule file keeps from being reported. */
  public static final String SUPPRESSED = "suppressed";

  private Headers() {}

  /** True for the word of a finding that a rule file keeps from being reported. */
  public static boolean isSuppressed(String state) {
    return state.strip().equalsIgnoreCase(SUPPRESSED);
  }

  /** The columns of {@link #FINDINGS} or {@link #QUESTIONS}, as a first issue has them. */
  public static List<String> of(String sheet) {
    return sheet.equals(QUESTIONS) ? OF_QUESTIONS : OF_FINDINGS;
  }
}
