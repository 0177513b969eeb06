package clearbed.recognise;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Splits a text into the parts that each make one statement: sentences, items between semicolons,
 * exceptions.
 */
final class Parts {

  /**
   * @param text plain form
   * @param lead the words before its colon, or empty; they are part of the text
   * @param exception true when it states an exception to the part before it
   * @param sentence true when it follows a full stop: it may speak on of what the sentence before
   *     spoke of
   */
  record Part(String text, String lead, boolean exception, boolean sentence) {}

  private static final Pattern SEMICOLON = Pattern.compile(";\\s*");
  private static final Pattern BUT =
      Pattern.compile(",?\\s+(?:but|whereas|while)\\s+(?=\\w)", Pattern.CASE_INSENSITIVE);
  // "100 percent behind clear tile, and not less than 95 percent elsewhere" says two things.
  private static final Pattern AND_OTHER =
      Pattern.compile(
          ",?\\s+and\\s+(?=(?:not less than |no less than |at least |a minimum of |minimum )?\\d+(?:\\.\\d+)?\\s*(?:%|percent))"
              + "|,\\s+and\\s+(?=(?-i:"
              + Tags.MARK
              + ")\\s+(?:is|are|shall|must|gets?|has|have)\\b)"
              + "|(?<=(?:percent|%)(?: minimum| min\\.)?),?\\s+and\\s+(?=(?:(?-i:[A-Z]{1,5}[-.]?\\d{1,3}[A-Z]?)(?:,? and |, | )){1,6}(?:with|at)\\b)",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern LEAD =
      Pattern.compile("^((?:(?!\\.\\s+[A-Z])[^:]){2,90}):(?=\\s|$)");

  private Parts() {}

  static List<Part> of(String text, Phrases except) {
    List<Part> parts = new ArrayList<>();
    for (Piece piece : sentences(text)) {
      boolean first = true;
      for (String clause : BUT.split(piece.text())) {
        for (String figure : AND_OTHER.split(clause)) {
          addWithException(parts, figure.trim(), except, piece.afterStop() && first);
          first = false;
        }
      }
    }
    return parts;
  }

  /** The words before the colon, or empty. */
  static String lead(String text) {
    Matcher m = LEAD.matcher(text);
    return m.find() ? m.group(1) : "";
  }

  private record Piece(String text, boolean afterStop) {}

  private static List<Piece> sentences(String text) {
    List<Piece> out = new ArrayList<>();
    int before = 0;
    for (Sentences.Sentence sentence : Sentences.of(text)) {
      boolean first =
          text.indexOf('\n', before) < 0 || text.indexOf('\n', before) > sentence.start();
      before = sentence.end();
      for (String item : SEMICOLON.split(sentence.text())) {
        if (item.isBlank()) continue;
        out.add(new Piece(item.trim(), first && !out.isEmpty()));
        first = false;
      }
    }
    return out;
  }

  private static void addWithException(
      List<Part> parts, String clause, Phrases except, boolean sentence) {
    if (clause.isEmpty()) return;
    Phrases.Hit hit = except.first(clause);
    int comma = hit != null && hit.start() == 0 ? clause.indexOf(", ") : -1;
    if (comma > 0) {
      String main = clause.substring(comma + 2).trim();
      parts.add(new Part(main, lead(main), false, sentence));
      parts.add(new Part(clause.substring(0, comma), "", true, false));
      return;
    }
    if (hit == null || hit.start() == 0) {
      parts.add(new Part(clause, lead(clause), false, sentence));
      return;
    }
    parts.add(new Part(clause.substring(0, hit.start()).trim(), lead(clause), false, sentence));
    parts.add(new Part(clause.substring(hit.start()).trim(), "", true, false));
  }
}
