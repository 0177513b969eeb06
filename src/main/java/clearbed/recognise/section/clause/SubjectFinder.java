package clearbed.recognise.section.clause;

import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.part.GlassWords;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the tags that a clause is about, and whether it makes glass tile of them. */
public final class SubjectFinder {
  /** The tags stand this close to the beginning, in characters: "Glass mosaic, type GM-3, ...". */
  private static final int OPENING = 60;

  /** A title may come to its tags later: "GLASS MOSAIC TO THE WALLS OF THE STEAM ROOM (WF-04)". */
  private static final int TITLE = 120;

  /** What a tile is called stands this close behind its tags, or the beginning. */
  private static final int CALLED = 60;

  private static final Pattern LAST_STOP = Pattern.compile("^(.*(?:[:;]| -))?.*$", Pattern.DOTALL);

  private static final Pattern FIRST_STOP =
      Pattern.compile("(?:;|\\.(?=\\s|$)).*$", Pattern.DOTALL);

  private static final Pattern SENTENCE_END = Pattern.compile("\\w\\w[\\w)\"]*[.?!]\\s+\\w");

  /** Behind these words stands something else than what the tile is. */
  private static final Pattern RELATED =
      Pattern.compile(
          "\\b(?:of|to|for|with|from|behind|beneath|beside|below|above|between|under|over|upon|onto|where|when|against|near|by|like)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern STOP_BEHIND = Pattern.compile("\\s*[.:]\\s+");

  /** "No coating CT-2 on glass tile" and "CT-2, over glass tile" call CT-2 none. */
  private static final Pattern ON_IT =
      Pattern.compile("\\bon(?: (?:the|all|any|each|every))*\\s*$", Pattern.CASE_INSENSITIVE);

  private static final Pattern DENIED =
      Pattern.compile(
          "\\b(?:not|never|nor|neither)(?: (?:a|an|of|made of))?\\s*$", Pattern.CASE_INSENSITIVE);

  private static final Set<String> TILE = Set.of("", "tile");

  private final Vocabulary vocabulary;
  private final GlassWords glassWords;

  public SubjectFinder(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.glassWords = new GlassWords(vocabulary);
  }

  /**
   * The tags that the words open with, as written; empty when they open with something else.
   *
   * @param heading true for a title, which may name its tags anywhere
   */
  public List<String> named(String words, boolean heading) {
    TagFinder.TagsAt first = TagFinder.firstTags(words, vocabulary);
    if (first == null || first.start() > (heading ? TITLE : OPENING)) return List.of();
    String head = words.substring(0, first.end());
    boolean sentenceEnds = Sentences.of(head).size() > 1;
    // "Mortar for GT-1: ..." is about mortar.
    return !sentenceEnds && TILE.contains(vocabulary.family(head)) ? first.tags() : List.of();
  }

  /** Where the words behind the tags begin: those of "Tile C. Glass mosaic" behind the stop. */
  private static int behind(TagFinder.TagsAt tags, String words) {
    if (tags == null) return 0;
    // "Scope: GM1 to GM6. Porcelain tile is elsewhere" says that of none of them.
    if (!words.substring(0, tags.start()).isBlank()) return tags.end();
    Matcher stop = STOP_BEHIND.matcher(words).region(tags.end(), words.length());
    return stop.lookingAt() ? stop.end() : tags.end();
  }

  /**
   * @param words of the clause
   * @param own the tags that it opens with
   * @param above the tags that the nearest title or lead-in above it opens with
   * @param mentioned the tags that it names anywhere
   */
  public Subject of(String words, List<String> own, List<String> above, List<String> mentioned) {
    if (!own.isEmpty()) return specified(own, true, words);
    if (!mentioned.isEmpty()) {
      String naming = naming(words, mentioned);
      boolean glass =
          TILE.contains(vocabulary.family(words))
              && vocabulary.glass().describesTile(naming)
              && glassWords.areIn(naming);
      return new Subject(mentioned, true, false, glass, "");
    }
    return above.isEmpty() ? Subject.NONE : specified(above, false, words);
  }

  /** The sentences that name one of the tags; all words where a range names them. */
  private static String naming(String words, List<String> tags) {
    StringBuilder out = new StringBuilder();
    for (Sentences.Sentence sentence : Sentences.of(words)) {
      for (String part : sentence.text().split(";"))
        if (tags.stream().anyMatch(part::contains)) out.append(part).append(' ');
    }
    return out.isEmpty() ? words : out.toString();
  }

  private Subject specified(List<String> tags, boolean own, String words) {
    TagFinder.TagsAt at = own ? TagFinder.firstTags(words, vocabulary) : null;
    int from = behind(at, words);
    boolean letters = tags.stream().allMatch(tag -> vocabulary.taught().letters(tag) != null);
    boolean glass = letters || saysGlass(words, at) && glassWords.areIn(words);
    String other =
        glass ? "" : vocabulary.glass().describesOtherTile(called(words, from)).orElse("");
    return new Subject(tags, own, true, glass, other);
  }

  /** "Colors: GT-1, white; GT-2, slate" calls none of them slate: what a tile is comes at once. */
  private static String called(String words, int from) {
    String behind = words.substring(from, Math.min(words.length(), from + CALLED));
    String first = FIRST_STOP.matcher(behind).replaceFirst("");
    String before = words.substring(0, from);
    Matcher related = RELATED.matcher(first);
    return before + (related.find() ? first.substring(0, related.start()) : first);
  }

  /** "CT-3 is shown for coordination; this section covers glass tile" has said all of CT-3. */
  private boolean isWhole(String between) {
    int end = between.lastIndexOf(';');
    return end > 0 && !vocabulary.isVerbless(between.substring(0, end));
  }

  /** True but for "Lane markers and turn targets.", which only says where. */
  private boolean endsBetween(String between) {
    return SENTENCE_END.matcher(between).find()
        && (between.length() > CALLED || !vocabulary.isVerbless(between));
  }

  private boolean isOfMaker(String words, int end) {
    String behind = words.substring(end).stripLeading();
    return vocabulary.list("clause.maker").startsAt(behind, 0);
  }

  /** "GT-1: cast glass tile", "Glass mosaic GT-1"; not "GT-1, to match glass tile". */
  private boolean saysGlass(String words, TagFinder.TagsAt tags) {
    int from = behind(tags, words);
    String opening = words.substring(0, Math.min(words.length(), from + 2 * CALLED));
    if (!vocabulary.glass().describesTile(opening)) return false;
    for (Phrases.Hit hit : vocabulary.list("glassTile").all(opening)) {
      boolean before = tags != null && hit.start() < tags.start();
      String between = opening.substring(before ? 0 : from, hit.start());
      // "GL-5 is not used. Was there glass tile in the lobby?" says nothing of GL-5.
      if (!before && (endsBetween(between) || isWhole(between))) continue;
      // "PT-1 and PT-2 are not glass tile"; "the glass tile makers accept WP-1".
      if (DENIED.matcher(between).find() || isOfMaker(opening, hit.end())) continue;
      String near = between.substring(LAST_STOP.matcher(between).replaceFirst("$1").length());
      boolean related = RELATED.matcher(near).find() || !before && ON_IT.matcher(near).find();
      if (!related && TILE.contains(vocabulary.family(near))) return true;
    }
    return false;
  }
}
