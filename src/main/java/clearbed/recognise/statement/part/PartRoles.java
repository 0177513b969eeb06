package clearbed.recognise.statement.part;

import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.regex.Pattern;

/** What a part does in its text: gives it a title, goes on, denies, says what for. */
public final class PartRoles {
  /** "Use NT on GT-1": a class of the sealant. */
  private static final Pattern USE_CLASS = Pattern.compile("Uses?:? (?:NT|[TIMGAO]\\d?)\\b");

  private static final Pattern USES =
      Pattern.compile(
          "^(?:(?i:use[ds]?|used for|for use|required|applies|apply|locations?)\\b[^.;]{0,12}|(?:(?!(?:(?:maker|manufacturer|supplier|producer)s?|that|those)\\b)[\\w-]+ ){0,5})"
              + "(?:(?i:for|of|at|in|on)|:)\\s+(?:tags? |(?i:glass (?:tiles?|mosaics?)) )?[A-Z]{1,5}[-. ]?(?:\\d|[A-Z]\\b)");

  private static final Pattern USED =
      Pattern.compile("^(?:use[ds]?|for use|applies|apply)\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern IS_USED =
      Pattern.compile(
          "\\b(?:used?|required?|locations?)\\b|:(?![^:]*\\d+(?:[./]\\d+)? ?(?:mm|m|in|ft|%|psi|N/mm))",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern BEHIND_TAGS =
      Pattern.compile("(?: [\\w-]+){0,2}\\W*|[^\\w ].*", Pattern.DOTALL);

  private static final Pattern OF_TAGS =
      Pattern.compile("\\p{L}{3,} of (?:the )?(?:\\p{Ll}+ ){0,2}$");

  private static final int LONGEST_FRAGMENT = 90;

  private static final int LONGEST_TITLE = 60;

  private final Vocabulary vocabulary;
  private final Attribute kind;

  public PartRoles(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.kind = vocabulary.attribute("tile.kind").orElse(null);
  }

  /** "Used for glass tile GT-1" speaks on of what stands before it. */
  public static boolean opensWithUse(String text) {
    return USED.matcher(text).find();
  }

  /** "Face-mounted sheets of GT-1": what the sentence is about is not the tile. */
  public static boolean isInPassing(String text) {
    TagFinder.TagsAt at = TagFinder.firstTags(text);
    return at != null && OF_TAGS.matcher(text.substring(0, at.start())).find();
  }

  public boolean saysHowMade(String text) {
    return kind != null && kind.words().anyTerm().in(text);
  }

  /** "Not used." and "None required." behind a title. */
  public boolean isDenial(String text) {
    return text.length() <= LONGEST_TITLE && vocabulary.list("negation.notRequired").in(text);
  }

  /** "The schedule gives size, see-through grade and back" names columns and fills none. */
  public boolean tellsWhere(String text) {
    return vocabulary.list("clause.tellsWhere").in(text)
        && Quantities.find(text).isEmpty()
        && Citations.find(text).isEmpty();
  }

  /** "CG1 and CG2 are classes of EN 13888" asks for neither. */
  public boolean defines(String text) {
    return vocabulary.list("clause.defines").in(text);
  }

  /** "Mortar to ANSI A118.15. White for GT-1, gray for GT-2.": words without a verb go on. */
  public boolean isFragment(String text) {
    return text.length() <= LONGEST_FRAGMENT
        && text.indexOf(':') < 0
        && vocabulary.isVerbless(text);
  }

  /** "For GT-2." and "Used at GT-2"; not "In GT-2 the sealant is rated for immersion". */
  public boolean saysWhatFor(String text) {
    return USES.matcher(text).find()
        && !USE_CLASS.matcher(text).lookingAt()
        && !opensWithFigure(text)
        && (USED.matcher(text).find()
            || IS_USED.matcher(USE_CLASS.matcher(text).replaceAll(" ")).find()
            || isFragment(text) && BEHIND_TAGS.matcher(behindTags(text)).matches());
  }

  /** "Winter work on GT-1 needs a heated enclosure" goes on, and says something of its own. */
  private static String behindTags(String text) {
    List<String> tags = TagFinder.written(text);
    if (tags.isEmpty()) return "";
    String last = tags.get(tags.size() - 1);
    return text.substring(text.lastIndexOf(last) + last.length());
  }

  /** "7 days for GT-3" behind "48 hours" takes nothing from the other tiles. */
  private static boolean opensWithFigure(String text) {
    List<Quantities.Found> figures = Quantities.find(text);
    return !figures.isEmpty() && figures.get(0).start() == 0;
  }

  /** "Spacing and width." runs in before what it is about. */
  public boolean isTitle(String text) {
    return text.endsWith(".")
        && text.length() <= LONGEST_TITLE
        && Quantities.find(text).isEmpty()
        && isFragment(text);
  }
}
