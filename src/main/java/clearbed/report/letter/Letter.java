package clearbed.report.letter;

import clearbed.mark.LetterWords;
import clearbed.model.report.ProjectNames;
import clearbed.report.wording.Phrasing;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * Questions ready to send.
 *
 * @param names of the project and its people
 * @param date of the letter, ISO 8601; may be empty
 * @param issue date of the issue that they come from, ISO 8601; may be empty
 * @param questions in the order of their numbers
 */
public record Letter(ProjectNames names, String date, String issue, List<Question> questions) {
  public static final String UNADDRESSED = "Not yet addressed to anybody";

  public Letter {
    questions = List.copyOf(questions);
  }

  /**
   * One question.
   *
   * @param number as in the workbook, so that an answer can name it; 0 for a finding that asks
   *     nothing
   * @param addressee whom it is put to; empty when nobody was named
   * @param tags the entries it holds for
   * @param found what is wrong, and what stands there
   * @param why what comes of it
   * @param source of the requirement
   * @param asked date it was asked, and the like for due; empty when not yet
   * @param answer what was answered so far; empty when nothing
   */
  public record Question(
      int number,
      String addressee,
      String tags,
      String place,
      String question,
      String found,
      String why,
      String source,
      String wording,
      String asked,
      String due,
      Standing standing,
      String answer) {

    public boolean asksNothing() {
      return number == 0;
    }

    /** True where room is left for an answer, which its number brings back. */
    boolean isAnswerable() {
      return standing.isAsked() && !asksNothing();
    }

    /** {@code Question 3: GT-1}; a finding that asks nothing goes without a number. */
    public String heading() {
      String words = asksNothing() ? LetterWords.FINDING : LetterWords.QUESTION + " " + number;
      return tags.isBlank() ? words : words + ": " + tags;
    }

    /** What is asked, or what is wrong where nothing is. */
    public String words() {
      return question.isBlank() ? found : question;
    }

    /** Label and words of all else that is said of it, in order; words may be blank. */
    public List<Map.Entry<String, String>> particulars() {
      return List.of(
          Map.entry(LetterWords.PLACE, place),
          Map.entry(LetterWords.FOUND, question.isBlank() ? "" : found),
          Map.entry(LetterWords.WHY, why),
          Map.entry("Source", source),
          Map.entry(LetterWords.WORDING, wording),
          Map.entry("Status", standing.words),
          Map.entry("Asked on", asked),
          Map.entry("Answer wanted by", due),
          Map.entry(standing.answerLabel, answer));
    }
  }

  /** Where a question stands (src/site/question-log.md). */
  public enum Standing {
    OPEN("", "Answer so far"),
    REOPENED("open again: it was gone in an earlier issue", "Answer so far"),
    /** With a reply from before it came back, or spread to more entries. */
    OUTDATED("open again: it came back, or more tiles have it now", "Answer before that"),
    ANSWERED("answered", "Answer"),
    DROPPED("dropped: not asked any more; the finding is still open", "Answer so far");

    private final String words;
    private final String answerLabel;

    Standing(String words, String answerLabel) {
      this.words = words;
      this.answerLabel = answerLabel;
    }

    boolean isAsked() {
      return this != ANSWERED && this != DROPPED;
    }
  }

  /** The same with a date, and with names in place of those it has. */
  public Letter dated(String day, ProjectNames given) {
    return new Letter(given.or(names), day, issue, questions);
  }

  /** The same with the questions to one addressee alone. */
  public Letter to(String addressee) {
    String who = addressee.strip();
    List<Question> theirs =
        questions.stream().filter(q -> q.addressee().strip().equalsIgnoreCase(who)).toList();
    String to = names.to().isEmpty() ? who : names.to();
    return new Letter(new ProjectNames(names.project(), names.from(), to), date, issue, theirs);
  }

  /** Everybody that a question is put to, in alphabetical order. */
  public List<String> addressees() {
    return byAddressee().keySet().stream().filter(who -> !who.equals(UNADDRESSED)).toList();
  }

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

  /** What stands over a group; nothing where the whole letter is to one and names nobody else. */
  String over(String addressee) {
    boolean all = addressees().isEmpty() && !names.to().isEmpty();
    return all ? "" : addressee;
  }

  /** What stands over all: label and words, in order; words may be blank. */
  List<Map.Entry<String, String>> head() {
    return List.of(
        Map.entry("Project", names.project()),
        Map.entry("Date", date),
        Map.entry("Issue", issue.isEmpty() ? "" : "documents of " + issue),
        Map.entry("From", names.from()),
        Map.entry("To", names.to()));
  }

  String title() {
    return LetterWords.TITLE;
  }

  String opening() {
    long asked = count(question -> question.standing().isAsked());
    String answer =
        asked == 0
            ? ""
            : " Please write each answer behind the word \"Answer\" and leave the numbers as they"
                + " are; suggested wording may be used, changed or put aside.";
    return LetterWords.OPENING + ". " + counted() + answer;
  }

  private String counted() {
    int asked = count(question -> question.standing().isAsked() && !question.asksNothing());
    int besides = count(question -> question.standing().isAsked() && question.asksNothing());
    int settled = questions.size() - asked - besides;
    int replied =
        count(question -> question.standing() == Standing.OPEN && !question.answer().isBlank());
    List<String> words = new ArrayList<>();
    words.add(Phrasing.count(asked, "question") + (asked == 1 ? " is open." : " are open."));
    if (replied > 0) {
      String some = replied == 1 ? "One has" : replied + " have";
      words.add(some + " an answer so far, given below: please confirm or correct it.");
    }
    if (besides > 0) {
      String ask = besides == 1 ? " that asks nothing is" : " that ask nothing are";
      words.add("Besides, " + Phrasing.count(besides, "finding") + ask + " open.");
    }
    if (settled > 0) {
      String more = settled == 1 ? "One more is" : settled + " more are";
      words.add(more + " listed with them, answered or dropped.");
    }
    return String.join(" ", words);
  }

  private int count(Predicate<Question> which) {
    return (int) questions.stream().filter(which).count();
  }
}
