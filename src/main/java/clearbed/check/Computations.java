package clearbed.check;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** The names under which rule files can ask for something computed. */
final class Computations {
  private static final Map<String, Computation> OF_AN_ENTRY =
      Map.of(
          "tile-size", new TileSizeCheck(),
          "coverage", new CoverageCheck(),
          "flatness", new FlatnessCheck(),
          "deflection", new DeflectionCheck(),
          "grout-width", new GroutWidthCheck(),
          "movement-spacing", new MovementSpacingCheck(),
          "movement-width", new MovementWidthCheck(),
          "movement-class", new MovementClassCheck(),
          "sealant-depth", new SealantDepthCheck(),
          "sealant-use", new SealantUseCheck());
  private static final Map<String, SetComputation> OF_THE_SET =
      Map.of(
          "conflict", new ConflictCheck(),
          "unresolved", new UnresolvedCheck(),
          "unit-slip", new UnitSlipCheck(),
          "withdrawn-standard", new WithdrawnStandardCheck(),
          "unlisted-standard", new ReferencesCheck(false),
          "unused-standard", new ReferencesCheck(true),
          "unscheduled-tag", new TagsCheck(true),
          "unspecified-tag", new TagsCheck(false),
          "dangling-reference", new DanglingReferenceCheck(),
          "vague", new VagueCheck());

  private Computations() {}

  static Set<String> names() {
    Set<String> names = new TreeSet<>(OF_AN_ENTRY.keySet());
    names.addAll(OF_THE_SET.keySet());
    return names;
  }

  /** The computation of one entry under that name, or null. */
  static Computation ofAnEntry(String name) {
    return OF_AN_ENTRY.get(name);
  }

  /** The computation over the whole set under that name, or null. */
  static SetComputation ofTheSet(String name) {
    return OF_THE_SET.get(name);
  }
}
