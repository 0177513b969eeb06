package clearbed.track;

import clearbed.mark.LetterWords;
import clearbed.report.letter.Letter;
import clearbed.report.wording.Deferral;
import clearbed.report.workbook.layout.Headers;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads the answers out of a letter that came back, by the numbers of the questions: what stands
 * behind "Answer" up to the next question. A reply without the headings of the letter is read by
 * the numbers that its lines begin with.
 */
final class ReturnedLetter {
  private static final Pattern QUESTION =
      Pattern.compile(LetterWords.QUESTION + " (\\d{1,6})(?: ?:.*)?");
  private static final Pattern FINDING = Pattern.compile(LetterWords.FINDING + "(?: ?:.*)?");
  private static final Pattern ANSWER =
      Pattern.compile(LetterWords.ANSWER + " ?:(.*)", Pattern.DOTALL);
  private static final Pattern NUMBERED =
      Pattern.compile("(?:(?:Question|Q|No\\.?) ?)?#?(\\d{1,6}) ?[.:)](?: (.*))?");
  private static final Pattern HEAD = Pattern.compile("(?:Project|Date|Issue|From|To) ?:.*");

  /** Above this no heading stands that belongs to the letter. */
  private static final int QUESTION_LEVEL = 2;

  /**
   * A line or paragraph of the file.
   *
   * @param level of a heading from 1, or 0
   * @param aside in words, where it stands outside the running text; else empty
   */
  record LetterPiece(String text, int level, String aside) {}

  private final Set<String> ours = new HashSet<>();
  private final Set<String> headings = new HashSet<>();
  private final Map<Integer, Map<String, String>> replies = new LinkedHashMap<>();
  private final List<Returned.Unplaced> unplaced = new ArrayList<>();
  private String place = "above the first question";
  private int number;
  private boolean answering;

  private ReturnedLetter(Letter sent) {
    ours.add(plain(LetterWords.TITLE));
    ours.add(plain(Deferral.LINE));
    ours.add(plain(Letter.UNADDRESSED));
    sent.addressees().forEach(who -> ours.add(plain(who)));
    for (Letter.Question question : sent.questions()) {
      headings.add(plain(question.heading()));
      ours.add(plain(question.words()));
      for (Map.Entry<String, String> each : question.particulars()) {
        ours.add(plain(each.getKey() + ": " + each.getValue()));
      }
    }
  }

  /**
   * @param sent the letter as it would be written now, with all questions
   */
  static Returned of(List<LetterPiece> pieces, Letter sent) {
    ReturnedLetter letter = new ReturnedLetter(sent);
    boolean headed = pieces.stream().anyMatch(letter::isQuestion);
    for (LetterPiece piece : pieces) {
      if (piece.text().isBlank()) continue;
      if (!piece.aside().isEmpty()) letter.leave(piece, piece.aside());
      else if (headed) letter.take(piece);
      else letter.takeNumbered(piece);
    }
    return new Returned(letter.replies, letter.unplaced);
  }

  private boolean isQuestion(LetterPiece piece) {
    return piece.aside().isEmpty() && isHeading(piece, QUESTION);
  }

  /** The words alone could be part of an answer: a heading stands by itself or looks like one. */
  private boolean isHeading(LetterPiece piece, Pattern words) {
    String text = plain(piece.text());
    return words.matcher(text).matches()
        && (piece.level() == QUESTION_LEVEL
            || headings.contains(text)
            || text.indexOf(':') < 0 && piece.level() == 0 && words == QUESTION);
  }

  private void take(LetterPiece piece) {
    String text = plain(piece.text());
    Matcher question = QUESTION.matcher(text);
    if (isHeading(piece, QUESTION) && question.matches()) {
      begin(Integer.parseInt(question.group(1)));
    } else if (isHeading(piece, FINDING) || piece.level() == 1) {
      number = 0;
      answering = false;
      place = "below \"" + text + "\"";
      if (piece.level() == 1 && !ours.contains(text)) leave(piece, "a heading of its own");
    } else {
      takeWords(piece, text);
    }
  }

  private void begin(int next) {
    number = next;
    answering = false;
    place = LetterWords.QUESTION + " " + next;
  }

  private void takeWords(LetterPiece piece, String text) {
    Matcher answer = ANSWER.matcher(piece.text().strip());
    if (number > 0 && !answering && answer.matches()) {
      answering = true;
      add(answer.group(1));
    } else if (answering) {
      add(piece.text());
    } else if (!isOurs(text)) {
      leave(piece, "not behind the word Answer");
    }
  }

  private boolean isOurs(String text) {
    boolean head = number == 0 && (HEAD.matcher(text).matches() || isOpening(text));
    return head || ours.contains(text);
  }

  private static boolean isOpening(String text) {
    return text.startsWith(LetterWords.OPENING);
  }

  private void takeNumbered(LetterPiece piece) {
    Matcher numbered = NUMBERED.matcher(plain(piece.text()));
    if (numbered.matches()) {
      begin(Integer.parseInt(numbered.group(1)));
      if (numbered.group(2) != null) add(numbered.group(2));
    } else if (number > 0) {
      add(piece.text());
    } else if (!isOurs(plain(piece.text()))) {
      leave(piece, "no number before it");
    }
  }

  private void add(String words) {
    if (words.isBlank()) return;
    replies
        .computeIfAbsent(number, any -> new LinkedHashMap<>())
        .merge(Headers.ANSWER, words.strip(), (before, more) -> before + "\n" + more);
  }

  private void leave(LetterPiece piece, String why) {
    unplaced.add(new Returned.Unplaced(place, piece.text().strip(), why));
  }

  static String plain(String text) {
    return text.strip().replaceAll("[\\s\\u00a0]+", " ");
  }
}
