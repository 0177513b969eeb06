package clearbed.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Questions ready to send.
 *
 * @param issue date of the issue that they come from, ISO 8601; may be empty
 * @param questions in the order of their numbers
 */
public record Letter(String issue, List<Question> questions) {
  public static final String UNADDRESSED = "Not yet addressed to anybody";

  public Letter {
    questions = List.copyOf(questions);
  }

  /**
   * One question.
   *
   * @param number as in the workbook, so that an answer can name it
   * @param addressee whom it is put to; empty when nobody was named
   * @param tags the entries it holds for
   * @param why what is wrong, and by which source
   * @param asked date it was asked, and the like for due; empty when not yet
   */
  public record Question(
      int number,
      String addressee,
      String tags,
      String place,
      String question,
      String why,
      String wording,
      String asked,
      String due) {}

  /** By addressee in alphabetical order; what is addressed to nobody comes last. */
  Map<String, List<Question>> byAddressee() {
    Map<String, List<Question>> groups = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
    List<Question> rest = new ArrayList<>();
    for (Question question : questions) {
      String who = question.addressee().strip();
      if (who.isEmpty()) rest.add(question);
      else groups.computeIfAbsent(who, name -> new ArrayList<>()).add(question);
    }
    Map<String, List<Question>> ordered = new LinkedHashMap<>(groups);
    if (!rest.isEmpty()) ordered.put(UNADDRESSED, rest);
    return ordered;
  }

  String title() {
    return "Questions on the glass tile documents";
  }

  String opening() {
    String from = issue.isEmpty() ? "" : " (issue of " + issue + ")";
    return "The documents were read for glass tile work"
        + from
        + ". "
        + Words.count(questions.size(), "question")
        + (questions.size() == 1 ? " is" : " are")
        + " open. Please answer by number; suggested wording may be used, changed or put aside.";
  }
}
