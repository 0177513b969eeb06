package clearbed.check.judge;

import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Where an entry is, by terms and in the words of its documents. */
public final class TilePlace {
  private static final Pattern ABOVE_GROUND =
      words(
          "suspended|elevated|above[- ]?(?:grade|ground)|supported slab|metal deck|composite (?:deck|slab)"
              + "|post-?tensioned|hollow-?core|upper floor");
  private static final Pattern UPPER_LEVEL =
      words(
          "(?:level|floor|storey|story|lvl)[- ]?(?:[2-9]|[1-9]\\d)"
              + "|(?:[2-9]|[1-9]\\d)(?:nd|rd|th) (?:floor|storey|story|level)"
              + "|(?:second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|upper|top) (?:floor|storey|story|level)");
  private static final Pattern SLAB = words("slabs?|concrete");
  private static final Pattern SOLID =
      words("concrete|masonry|block ?work|blocks?|brick ?work|bricks?|cmu|screeds?|slabs?|shells?");
  private static final Pattern FRAMED =
      words(
          "studs?|fram(?:e|ed|es|ing)|boards?|backer|plywood|joists?|wood|timber|lath|panels?|plaster ?boards?|drywall");
  private static final Pattern ON_GRADE =
      words(
          "(?:slabs?[- ])?on[- ](?:grade|ground)|ground[- ](?:bearing|supported)(?: slabs?)?|slabs? on (?:grade|ground)");
  private static final Pattern OUTDOORS =
      words(
          "out ?doors?|outdoor|outside|external|exterior|open[- ]air|terrace|roof ?top|roof|garden|courtyard|patio|deck");
  private static final Pattern INDOORS =
      words("in ?doors?|indoor|inside|internal|interior|natatorium|pool hall|pool house|basement");
  private static final Quantity MOSAIC = Quantity.of(3, Unit.INCH);

  private TilePlace() {}

  /** True for a slab that stands free of the ground, by its words or by the level of its room. */
  public static boolean aboveGround(Entry entry) {
    String slab = substrate(entry);
    return ABOVE_GROUND.matcher(slab).find()
        || SLAB.matcher(slab).find()
            && !ON_GRADE.matcher(slab).find()
            && UPPER_LEVEL.matcher(slab + "; " + words(entry)).find();
  }

  /** True for concrete or masonry that no framing carries; a slab above the ground spans. */
  public static boolean isSolid(Entry entry) {
    String words = substrate(entry);
    return SOLID.matcher(words).find() && !FRAMED.matcher(words).find() && !aboveGround(entry);
  }

  /** True for a slab that lies on the ground. */
  public static boolean onGrade(Entry entry) {
    return ON_GRADE.matcher(substrate(entry)).find();
  }

  /** True where words say that a place is out of doors. */
  public static boolean outdoors(Entry entry) {
    return OUTDOORS.matcher(words(entry)).find() && !indoors(entry);
  }

  /** True where words say that a place is inside. */
  public static boolean indoors(Entry entry) {
    return INDOORS.matcher(words(entry)).find();
  }

  /** True for tile that is called mosaic, or is no larger than 3 in. */
  public static boolean mosaic(Entry entry) {
    Optional<Quantity> longest =
        entry.governing("tile.size").stream()
            .filter(v -> v.content() instanceof Content.Size)
            .flatMap(v -> ((Content.Size) v.content()).sides().stream())
            .max(Quantity::compareTo);
    return longest
        .map(side -> side.compareTo(MOSAIC) <= 0)
        .orElse(entry.evidence().toLowerCase(Locale.ROOT).contains("mosaic"));
  }

  private static String substrate(Entry entry) {
    return stated(entry, "substrate.type").map(Value::asWritten).collect(Collectors.joining("; "));
  }

  private static Pattern words(String any) {
    return Pattern.compile("\\b(?:" + any + ")\\b", Pattern.CASE_INSENSITIVE);
  }

  /** The terms of an attribute that any place of the entry states; of places all count. */
  public static Set<String> terms(Entry entry, String attribute) {
    return stated(entry, attribute)
        .filter(v -> v.content() instanceof Content.Term)
        .map(v -> v.content().text())
        .collect(Collectors.toSet());
  }

  /** The words on room, surface and exposure, as written. */
  public static String words(Entry entry) {
    return Stream.of("location.room", "location.surface", "location.exposure")
        .flatMap(attribute -> stated(entry, attribute))
        .map(Value::asWritten)
        .distinct()
        .collect(Collectors.joining("; "));
  }

  private static Stream<Value> stated(Entry entry, String attribute) {
    return entry.values(attribute).stream().filter(v -> !v.excluded());
  }
}
