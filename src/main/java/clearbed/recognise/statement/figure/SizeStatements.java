package clearbed.recognise.statement.figure;

import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Unit;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.Sizes;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Sizes of tile: in its description, and wherever a text gives one of a tile that it names. */
public final class SizeStatements {
  private static final Pattern SIZE_OF_TAG =
      Pattern.compile(
          "^[A-Z]{1,5}[-. ]?\\d{1,3}[A-Z]?\\b[^.;]{0,40}\\b(?:(?:nominal|tile|face|module) )?(?:size|dimension)s?\\b",
          Pattern.CASE_INSENSITIVE);

  /** What stands before the size in "GT-1 tesserae, 1/2 x 1/2 in., are turned on the sheet". */
  private static final Pattern SIZED_TAG =
      Pattern.compile(
          "^[A-Z]{1,5}-?(?:\\d{1,3}[A-Z]?|[A-Z])(?: (?!to|at|in|on|from|with|behind)[a-z]+){0,3},? ?$");

  /** All that may stand between a tag and its size: "GT-1 is", "GT-1 (", "GT-1: glass mosaic, ". */
  private static final Pattern BEHIND_TAG =
      Pattern.compile(
          "\\s*[:,(]?\\s*(?:(?:is|are|in|of|as|size|nominal(?:ly)?|face|glass|cast|fused|sintered|clear|translucent|transparent|opaque|mosaics?|tiles?|pieces?)[\\s,:]+){0,5}$",
          Pattern.CASE_INSENSITIVE);

  /** "The opening in GT-1 is 6 x 9 in" gives no size of the tile, "sheets of GT-1 are" does. */
  private static final Pattern OF_SOMETHING =
      Pattern.compile("\\b(?:in|of|at|on|behind|around|near|with) (?:the )?$");

  private static final Pattern OF_ITSELF =
      Pattern.compile(
          "\\W*(?:the |each |all )?(?:\\w+ )?(?:walls?|floors?|tiles?|mosaics?|sizes?|sheets?|pieces?) (?:in|of|with) (?:the )?",
          Pattern.CASE_INSENSITIVE);

  /** "Size 1 in x 2 in", "mosaic 25 x 25 mm". */
  private static final Pattern NAMED_BEFORE =
      Pattern.compile(
          "\\b(?:(?:face |tile |piece |nominal |chip )?(?:size|format|dimension|module)s?|mosaics?|tesserae|chips)(?: (?:is|are|of|nominal(?:ly)?))?[\\s:,(]*$"
              + "|\\bsizes?\\b[^.;]{0,45}\\b(?:is|are|as|to|be|reads?)\\s*$",
          Pattern.CASE_INSENSITIVE);

  /** "Sheets are 1 x 1 in pieces", "sheets of 20 x 20 mm mosaic". */
  private static final Pattern PIECES_BEHIND =
      Pattern.compile(
          "[\\s.,-]{0,3}(?:(?:glass|cast|fused) )?(?:mosaics?|pieces|chips|tesserae|tiles?)\\b(?! (?:panels?|sheets?|samples?))",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern SHEETS = Pattern.compile("sheets?", Pattern.CASE_INSENSITIVE);

  private static final Pattern NOTHING_ELSE =
      Pattern.compile("(?:nominal|thick|in|mm|cm|\\W)*", Pattern.CASE_INSENSITIVE);

  private static final String MOUNTING = "tile.mounting";

  /** The next of what commas, semicolons or strokes set apart. */
  private static final Pattern ITEM =
      Pattern.compile("\\s*[,;/\\n]\\s*(\\d[^,;\\n]{0,12}?)\\s*(?=[,;\\n]|\\s/\\s|$)");

  /** A length without a name might be that of a joint, if it is less, in metres. */
  private static final double THINNEST = 0.0035;

  private static final double THICKEST = 0.025;

  /** A glass tile has no longer side, in metres. */
  private static final double LONGEST_SIDE = 1.3;

  private final Vocabulary vocabulary;

  public SizeStatements(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  public void addTo(Passage p, List<int[]> taken) {
    Attribute attribute = vocabulary.attribute("tile.size").orElse(null);
    if (attribute == null) return;
    boolean column = p.context.attribute().equals(attribute.id());
    // "Sheet: 12 in by 12 in" is no size of a tile.
    String title = p.context.title();
    if (p.context.attribute().equals(MOUNTING) || isSheet(title)) return;
    boolean headed = attribute.words().headers().in(title);
    if (!column && !headed && attribute.words().not().in(title)) return;
    boolean ofTile = p.context.describesTile() || SIZE_OF_TAG.matcher(p.whole).find();
    boolean ofWork = Set.of("", "tile").contains(p.context.family());
    for (Quantities.Found found : Quantities.find(p.text, p.context.mark())) {
      if (!isSize(found) || inside(taken, found)) continue;
      boolean tagged = SIZED_TAG.matcher(p.whole.substring(0, found.start())).matches();
      boolean free = !attribute.words().not().in(p.whole);
      boolean tile =
          ofTile && (column || named(attribute, p.whole, found))
              || free && (tagged || ofTile && ofWork)
              || saidOfATag(p, attribute, found);
      if (tile) {
        p.add(attribute, found.content(), false, found.start(), found.end());
        if (ofTile) thickness(p, found.end());
        return;
      }
    }
  }

  /** "Glass mosaic; 1 x 1 in; 1/4 in; teal": a length by itself behind the size. */
  private void thickness(Passage p, int from) {
    Matcher item = ITEM.matcher(p.text).region(from, p.text.length());
    Attribute thickness = vocabulary.attribute("tile.thickness").orElse(null);
    if (!item.lookingAt() || thickness == null) return;
    for (Quantities.Found found : Quantities.find(p.text, p.context.mark())) {
      boolean whole = found.start() == item.start(1) && found.end() == item.end(1);
      if (!whole || !(found.content() instanceof Content.Amount amount)) continue;
      boolean length = amount.low().unit().dimension() == Dimension.LENGTH;
      if (!length || amount.low().in(Unit.METRE) < THINNEST) continue;
      if (amount.high().in(Unit.METRE) > THICKEST) continue;
      p.add(thickness, found.content(), false, found.start(), found.end());
    }
  }

  /** "Bar front: GT-6 in 4 x 4 in, stack bond" says it of GT-6 wherever it stands. */
  private boolean saidOfATag(Passage p, Attribute size, Quantities.Found found) {
    if (!p.context.attribute().isEmpty() || !isTileSize(found.content())) return false;
    TagFinder.TagsAt tags = TagFinder.firstTags(p.whole);
    boolean before = tags != null && tags.end() <= found.start();
    if (!before && !p.carried.tagged()) return false;
    boolean pieces = PIECES_BEHIND.matcher(p.text).region(found.end(), p.text.length()).lookingAt();
    String own = inCommas(p.whole, found);
    if (pieces) own = SHEETS.matcher(own).replaceAll(" ");
    else if (Quantities.isOfSheet(p.text, found.start(), found.end())) return false;
    if (size.words().not().in(own)) return false;
    String lead = p.text.substring(0, found.start());
    String subject = before ? lead.substring(0, tags.start()) : "";
    boolean near =
        before
            && BEHIND_TAG.matcher(lead.substring(tags.end())).matches()
            && (!OF_SOMETHING.matcher(subject).find() || OF_ITSELF.matcher(subject).matches());
    boolean alone =
        NOTHING_ELSE.matcher(lead + p.text.substring(found.end())).matches() && p.carried.tagged();
    return pieces || near || alone || NAMED_BEFORE.matcher(lead).find();
  }

  private static boolean isTileSize(Content content) {
    return content instanceof Content.Size size
        && size.sides().size() > 1
        && size.sides().stream().allMatch(side -> side.in(Unit.METRE) < LONGEST_SIDE);
  }

  /** "Size 25 x 25 mm, in sheets mounted on their edges": between its commas it is named. */
  private static boolean named(Attribute size, String text, Quantities.Found found) {
    String own = inCommas(text, found);
    return own.length() < text.length()
        && size.words().cues().in(own)
        && !size.words().not().in(own);
  }

  private static String inCommas(String text, Quantities.Found found) {
    int from = text.lastIndexOf(", ", found.start());
    int to = text.indexOf(",", found.end());
    return text.substring(Math.max(from, 0), to < 0 ? text.length() : to);
  }

  /** "Sheet" heads how the tile is mounted, and the size of that. */
  private boolean isSheet(String title) {
    String heading = title.toLowerCase(Locale.ROOT).strip();
    return vocabulary.attribute(MOUNTING).orElseThrow().words().headers().matches(heading);
  }

  static boolean isSize(Quantities.Found found) {
    return found.content() instanceof Content.Size
        || found.content() instanceof Content.NotUnderstood figure
            && Sizes.PATTERN.matcher(figure.written()).lookingAt();
  }

  static boolean inside(List<int[]> taken, Quantities.Found found) {
    return taken.stream().anyMatch(t -> found.start() < t[1] && t[0] < found.end());
  }
}
