package clearbed.recognise.section.outline;

import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.part.Parts;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * The words of a paragraph that name the subject of what follows: those before a colon, a title of
 * a few words that runs on ("Curing. Wait 48 hours ..."), or a short line as a whole.
 */
public final class Leads {
  private static final int LONGEST = 60;
  private static final int MOST_WORDS = 9;

  /** A sentence that says what all below it is for is no longer, in characters. */
  private static final int LONGEST_SCOPE = 160;

  private static final Pattern EXCEPT = Pattern.compile("(?i)^except[^,]*,\\s*");
  private static final Pattern HUNG =
      Pattern.compile(
          "\\.?\\s+(?=[A-Z][a-z]|\\d|[A-Z]{2,5} [A-Z]?\\d)|\\s+[-\u2013\u2014]\\s+(?=\\p{L}|\\d)");

  /** Behind the tags: ", servery back wall", " at the bar", " (lobby)". */
  private static final Pattern PLACED = Pattern.compile(",? (?=[a-z(])");

  private static final int LONGEST_PLACE = 120;
  private static final Pattern BLANKS = Pattern.compile("\\s+");
  private static final Pattern COMPOUND = Pattern.compile("\\w+(?:-\\w+)+");

  /** A figure that is no part of a tag: "1/8", "48". */
  private static final Pattern FIGURE = Pattern.compile("(?<![\\w-])\\d");

  private final Vocabulary vocabulary;

  public Leads(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** The lead of the words, or empty. */
  String of(String words) {
    String lead = Parts.lead(words);
    if (lead.isEmpty()) lead = hangingTags(words);
    // "Except at pools, mortar: ..." is about mortar, not about pools.
    if (!lead.isEmpty()) return EXCEPT.matcher(lead).replaceFirst("");
    return words.length() <= LONGEST && !words.endsWith(".") ? words : "";
  }

  /** "GT-2 Foyer wall, dry.", "MB-1. White mortar": a mark in the margin, behind it the text. */
  private String hangingTags(String words) {
    boolean capitals = words.equals(words.toUpperCase(Locale.ROOT));
    TagFinder.TagsAt tags = capitals ? null : TagFinder.firstTags(words);
    if (tags == null || tags.start() > 0) return "";
    boolean hung = HUNG.matcher(words).region(tags.end(), words.length()).lookingAt();
    return hung || isPlaced(words, tags.end()) ? words.substring(0, tags.end()) : "";
  }

  /** "GT-1, shower walls (interior, wet). Pressed glass ...": where it is, and then the rest. */
  private boolean isPlaced(String words, int behindTags) {
    if (!PLACED.matcher(words).region(behindTags, words.length()).lookingAt()) return false;
    String opening = words.substring(0, Math.min(words.length(), 2 * LONGEST_PLACE));
    List<Sentences.Sentence> all = Sentences.of(opening);
    if (all.size() < 2) return false;
    String first = all.get(0).text();
    return first.length() <= LONGEST_PLACE
        && first.length() > behindTags
        && first.indexOf(':') < 0
        && vocabulary.isVerbless(first);
  }

  /** The title that a paragraph begins with and ends by a full stop, without it; or empty. */
  public String runIn(String text) {
    int stop = text.indexOf(". ");
    if (stop < 3 || stop > LONGEST) return "";
    List<Sentences.Sentence> all = Sentences.of(text.substring(0, Math.min(text.length(), 300)));
    if (all.size() < 2) return "";
    String first = all.get(0).text().strip();
    if (!first.endsWith(".") || first.length() > LONGEST) return "";
    String title = first.substring(0, first.length() - 1);
    boolean brief = BLANKS.split(title).length <= MOST_WORDS;
    // The "set" of "dry-set mortar" is no verb.
    String words = COMPOUND.matcher(title).replaceAll("-");
    boolean says =
        title.indexOf(',') >= 0 || FIGURE.matcher(title).find() || !vocabulary.isVerbless(words);
    return brief && !says ? title : "";
  }

  /**
   * The words that limit all below a line such as "These notes apply to GM-1 and GM-2 and not to
   * stone"; empty where it is none.
   */
  String scope(String words) {
    if (words.length() > LONGEST_SCOPE || FIGURE.matcher(words).find()) return "";
    if (!vocabulary.list("clause.appliesTo").in(words)) return "";
    return vocabulary.list("clause.butNot").without(words).strip();
  }
}
