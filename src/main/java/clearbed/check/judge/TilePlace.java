package clearbed.check.judge;

import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Where an entry is, by terms and in the words of its documents. */
public final class TilePlace {
  private static final Quantity MOSAIC = Quantity.of(3, Unit.INCH);

  private TilePlace() {}

  /** True for a slab that stands free of the ground, by its words or by the level of its room. */
  public static boolean aboveGround(Entry entry, Vocabulary vocabulary) {
    String slab = substrate(entry);
    return vocabulary.list("checks.aboveGround").in(slab)
        || vocabulary.list("checks.slab").in(slab)
            && !vocabulary.list("checks.onGrade").in(slab)
            && vocabulary.list("checks.upperLevel").in(slab + "; " + words(entry));
  }

  /** True for concrete or masonry that no framing carries; a slab above the ground spans. */
  public static boolean isSolid(Entry entry, Vocabulary vocabulary) {
    String words = substrate(entry);
    return vocabulary.list("checks.solid").in(words)
        && !vocabulary.list("checks.framed").in(words)
        && !aboveGround(entry, vocabulary);
  }

  /** True for a slab that lies on the ground. */
  public static boolean onGrade(Entry entry, Vocabulary vocabulary) {
    return vocabulary.list("checks.onGrade").in(substrate(entry));
  }

  /** True where words say that a place is out of doors. */
  public static boolean outdoors(Entry entry, Vocabulary vocabulary) {
    return vocabulary.list("checks.outdoors").in(words(entry)) && !indoors(entry, vocabulary);
  }

  /** True where words say that a place is inside. */
  public static boolean indoors(Entry entry, Vocabulary vocabulary) {
    return vocabulary.list("checks.indoors").in(words(entry));
  }

  /** True for tile that is called mosaic, or is no larger than 3 in. */
  public static boolean mosaic(Entry entry, Vocabulary vocabulary) {
    Optional<Quantity> longest =
        entry.governing("tile.size").stream()
            .filter(v -> v.content() instanceof Content.Size)
            .flatMap(v -> ((Content.Size) v.content()).sides().stream())
            .max(Quantity::compareTo);
    return longest
        .map(side -> side.compareTo(MOSAIC) <= 0)
        .orElse(vocabulary.list("checks.mosaic").in(entry.evidence()));
  }

  private static String substrate(Entry entry) {
    return stated(entry, "substrate.type").map(Value::asWritten).collect(Collectors.joining("; "));
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
