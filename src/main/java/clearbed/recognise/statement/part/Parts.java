package clearbed.recognise.statement.part;

import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Splits a text into the parts that each make one statement: sentences, items between semicolons,
 * exceptions.
 */
public final class Parts {

  /**
   * @param text plain form
   * @param lead the words before its colon, or empty; they are part of the text
   * @param exception true when it states an exception to the part before it
   * @param sentence true when it follows a full stop: it may speak on of what the sentence before
   *     spoke of
   */
  public record Part(String text, String lead, boolean exception, boolean sentence) {}

  private static final Pattern SEMICOLON = Pattern.compile(";\\s*");
  private static final Pattern BUT =
      Pattern.compile(",?\\s+(?:but|whereas|while)\\s+(?=\\w)", Pattern.CASE_INSENSITIVE);
  private static final Pattern ALL_SO_FAR =
      Pattern.compile("\\b(?:all|every|each|any)\\b[\\w ]{0,30}$", Pattern.CASE_INSENSITIVE);
  private static final Pattern TAG_NEXT =
      Pattern.compile("(?:for |type |tile |mark |code )?" + Tags.MARK + "(?![\\w])");
  private static final Pattern ALL =
      Pattern.compile("\\S (all|every|each|any)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern LEAD =
      Pattern.compile("^((?:(?!\\.\\s+[A-Z])[^:]){2,90}):(?=\\s|$)");

  private static final Pattern USES =
      Pattern.compile("(?i:(?:[\\w-]+ ){0,3}uses?)(?: of sealants?)?:? (?:NT|[TIMGAO]\\d?)\\b");

  private static final Pattern USE = Pattern.compile("\\s*(?:NT|[TIMGAO]\\d?)\\b(?![.-]\\d)");

  private static final Pattern ASIDE = Pattern.compile(" \\([^()]{2,40}\\)(?=:)");

  private static final Pattern VERB =
      Pattern.compile(",? (?:is|are|shall|must|will|has|have|[a-z]{3,12}s) ");

  private static final Pattern UNLIKE = Pattern.compile("unlike\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern RELATIVE =
      Pattern.compile(", (?:which|where|whose|who|that|when) ", Pattern.CASE_INSENSITIVE);

  private static final Pattern PLACES_EXCEPTED = Pattern.compile("[\\p{L} -]{3,40}(?=: )");

  private static final Pattern ON_IT = Pattern.compile("(?:the|its|it|this|that) ");

  /** Tags stand so close behind "except", in characters. */
  private static final int NEAR = 20;

  private Parts() {}

  public static List<Part> of(String text, Phrases except) {
    List<Part> parts = new ArrayList<>();
    for (Piece piece : sentences(text)) {
      boolean first = true;
      for (String clause : apartAtBut(piece.text())) {
        addWithException(parts, clause.trim(), except, piece.afterStop() && first);
        first = false;
      }
    }
    return parts;
  }

  private static List<String> apartAtBut(String text) {
    List<String> out = new ArrayList<>();
    int from = 0;
    Matcher m = BUT.matcher(text);
    while (m.find()) {
      // "All codes but GT-3" is one exception, and no second statement.
      boolean excepts =
          ALL_SO_FAR.matcher(text.substring(from, m.start())).find()
              && TAG_NEXT.matcher(text).region(m.end(), text.length()).lookingAt();
      if (excepts) continue;
      out.add(text.substring(from, m.start()));
      from = m.end();
    }
    out.add(text.substring(from));
    return out;
  }

  /** The words before the colon, or empty. */
  public static String lead(String text) {
    Matcher m = LEAD.matcher(text);
    // "Thin-set by A108.5 (GT-4: A108.6)" is no lead of what follows.
    return m.find() && m.group(1).lastIndexOf('(') <= m.group(1).lastIndexOf(')') ? m.group(1) : "";
  }

  private record Piece(String text, boolean afterStop) {}

  private static List<Piece> sentences(String text) {
    List<Piece> out = new ArrayList<>();
    int before = 0;
    for (Sentences.Sentence sentence : Sentences.of(text)) {
      boolean first =
          text.indexOf('\n', before) < 0 || text.indexOf('\n', before) > sentence.start();
      before = sentence.end();
      boolean uses = false;
      boolean tile = opensWithTile(sentence.text());
      for (String item : SEMICOLON.split(sentence.text())) {
        if (item.isBlank()) continue;
        // "GT-2 is measured by the pendulum; the value is not below 40."
        boolean ofIt = tile && ON_IT.matcher(item).lookingAt() && TagFinder.tags(item).isEmpty();
        // "Uses: NT for walls; T for floors" names the use once for all.
        boolean another = uses && USE.matcher(item).lookingAt();
        uses |= USES.matcher(item).lookingAt();
        boolean goesOn = (first || ofIt) && !out.isEmpty();
        out.add(new Piece(another ? "Use " + item.trim() : item.trim(), goesOn));
        first = false;
      }
    }
    return out;
  }

  /** "GT-2 is ...", of which all of the sentence speaks. */
  private static boolean opensWithTile(String sentence) {
    if (sentence.indexOf(';') < 0) return false;
    TagFinder.TagsAt tags = TagFinder.firstTags(sentence);
    return tags != null
        && tags.start() == 0
        && VERB.matcher(sentence).region(tags.end(), sentence.length()).lookingAt();
  }

  /** Where the words behind an exception that opens a sentence begin: a comma, or "all". */
  private static int mainClause(String clause) {
    int comma = clause.indexOf(", ");
    // "Except in the lobby, where joints may be 25 ft apart, locate them ..."
    if (comma >= 0 && RELATIVE.matcher(clause).region(comma, clause.length()).lookingAt()) {
      int behind = clause.indexOf(", ", comma + 2);
      if (behind > 0) comma = behind;
    }
    Matcher all = ALL.matcher(clause);
    return comma < 0 && all.find() ? all.start(1) : comma;
  }

  /**
   * "Each maker except that of GT-3 confirms ...", "all items except GT-3: 3 mm": where the
   * sentence goes on; 0 where it ends.
   */
  private static int behindExcepted(String clause, Phrases.Hit except) {
    TagFinder.TagsAt tags = TagFinder.firstTags(clause.substring(except.end()));
    if (tags == null || tags.start() > NEAR) {
      // "Grout, all glass tile except floors: ANSI A118.7."
      Matcher places = PLACES_EXCEPTED.matcher(clause).region(except.end(), clause.length());
      return places.lookingAt() ? places.end() : 0;
    }
    int end = except.end() + tags.end();
    // "(sides under 15 in.)"
    Matcher aside = ASIDE.matcher(clause).region(end, clause.length());
    if (aside.lookingAt()) end = aside.end();
    boolean colon = end < clause.length() && clause.charAt(end) == ':';
    return colon || VERB.matcher(clause).region(end, clause.length()).lookingAt() ? end : 0;
  }

  /** "Walls and floors (except the pool): L/360": where the bracket ends; 0 where it is none. */
  private static int bracketed(String clause, Phrases.Hit except) {
    int from = except.start();
    boolean opens = clause.charAt(from) == '(';
    while (!opens && from > 0 && clause.charAt(from - 1) == ' ') from--;
    if (!opens && (from == 0 || clause.charAt(from - 1) != '(')) return 0;
    int end = clause.indexOf(')', except.end());
    boolean more =
        end > 0 && clause.substring(end + 1).chars().anyMatch(Character::isLetterOrDigit);
    return more ? end : 0;
  }

  private static void addWithException(
      List<Part> parts, String clause, Phrases except, boolean sentence) {
    if (clause.isEmpty()) return;
    Phrases.Hit hit = except.first(clause);
    int comma = hit != null && hit.start() == 0 ? mainClause(clause) : -1;
    if (comma > 0) {
      String main = clause.substring(comma).replaceFirst("^, ", "").trim();
      parts.add(new Part(main, lead(main), false, sentence));
      // "Unlike PT-1, which bears acid, glass is cleaned with water": what PT-1 bears is not asked.
      if (!UNLIKE.matcher(clause).lookingAt())
        parts.add(new Part(clause.substring(0, comma), "", true, false));
      return;
    }
    if (hit == null || hit.start() == 0) {
      parts.add(new Part(clause, lead(clause), false, sentence));
      return;
    }
    int goesOn = behindExcepted(clause, hit);
    int bracket = bracketed(clause, hit);
    if (bracket > 0) {
      String around =
          clause.substring(0, hit.start()).replaceFirst("\\s*\\(\\s*$", "")
              + clause.substring(bracket + 1);
      parts.add(new Part(around, lead(around), false, sentence));
      parts.add(new Part(clause.substring(hit.start(), bracket).trim(), "", true, false));
      return;
    }
    String main = clause.substring(0, hit.start()).trim();
    if (goesOn > 0) main += clause.substring(goesOn);
    int end = goesOn > 0 ? goesOn : clause.length();
    parts.add(new Part(main, lead(goesOn > 0 ? main : clause), false, sentence));
    parts.add(new Part(clause.substring(hit.start(), end).trim(), "", true, false));
  }
}
