package clearbed.corpus;

import static clearbed.corpus.Operators.delete;
import static clearbed.corpus.Operators.of;
import static clearbed.corpus.Operators.rewrite;
import static clearbed.corpus.Operators.swap;
import static clearbed.corpus.Operators.when;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** Defects of movement joints and of the sealant in them. */
final class MovementOperators {
  private static final Pattern EXTERIOR = Pattern.compile("(?i)exterior");

  private MovementOperators() {}

  static List<Operator> all() {
    return List.of(
        guideDeleted(),
        when(
            rewrite(
                "guide-left-to-installer",
                "move.guide",
                "Movement joints are at the installer's discretion.",
                "movement-guideline",
                "vague",
                "unresolved"),
            MovementOperators::citesGuide),
        delete("spacing-deleted", "move.spacing", "movement-spacing", "movement-width"),
        farApart(),
        delete("movement-width-deleted", "move.width", "movement-width"),
        hairline(),
        narrowOutdoors(),
        delete("places-deleted", "move.places", "movement-places"),
        rewrite(
            "places-perimeter-only",
            "move.places",
            "Movement joints are at perimeters only.",
            "movement-places",
            "conflict",
            "movement-spacing"),
        noMovement(),
        // A class of ISO 11600 names its standard.
        when(
            delete(
                "sealant-standard-deleted", "sealant.standard", "joint-sealant", "movement-class"),
            set ->
                set.statements("sealant.class").stream().noneMatch(s -> s.text().contains("LM"))),
        swap(
            "sealant-latex-standard",
            "sealant.standard",
            "ASTM C920",
            "ASTM C834",
            "joint-sealant",
            "movement-class"),
        federalSpecification(),
        of(
            "sealant-sanitary-standard",
            "call for a sanitary sealant",
            set ->
                Defect.in(set)
                    .edit("sealant.standard", text -> text.replaceAll("ISO 11600", "EN 15651-3"))
                    .expectAmong("joint-sealant", Needs.notForSanitarySealant(set))
                    .aside("sealant-use")),
        rewrite(
            "sealant-of-windows-only",
            "sealant.standard",
            "Sealant around windows: silicone, ASTM C920,",
            "joint-sealant",
            "movement-class",
            "sealant-use"),
        delete(
            "sealant-class-deleted",
            "sealant.class",
            "movement-class",
            "movement-width",
            "joint-sealant",
            "sealant-use"),
        weakClass(),
        delete("sealant-depth-deleted", "sealant.depth", "sealant-depth"),
        rewrite("sealant-depth-thin", "sealant.depth", "Sealant depth: 1/16 in.", "sealant-depth"),
        swap("sealant-use-no-traffic", "sealant.use.T", "Use T", "Use NT", "sealant-use"),
        swap("sealant-use-not-immersed", "sealant.use.I", "Use I", "Use NT", "sealant-use"));
  }

  /** A set that draws its own layout keeps its guideline when a clause goes. */
  private static boolean citesGuide(DraftSet set) {
    return set.statements("move.guide").stream()
        .anyMatch(statement -> statement.text().contains("EJ171"));
  }

  private static Operator guideDeleted() {
    return when(
        of(
            "guide-deleted",
            "delete the movement joint guideline wherever it is named",
            set ->
                Defect.in(set)
                    .delete("move.guide")
                    .everywhere(MovementOperators::withoutGuide)
                    .expect("movement-guideline")),
        MovementOperators::citesGuide);
  }

  private static String withoutGuide(String text) {
    return text.replaceAll(",?( including)? EJ171(, movement joints)?", "");
  }

  private static Operator farApart() {
    return of(
        "spacing-too-far",
        "set movement joints forty feet (twelve metres) apart",
        set ->
            Defect.in(set)
                .edit(
                    "move.spacing",
                    text -> text.replaceFirst("\\d+(\\.\\d+)?", metric(set, text) ? "12" : "40"))
                .expect("movement-spacing")
                .aside("movement-width", "movement-class", "unit-slip"));
  }

  private static Operator hairline() {
    return of(
        "movement-width-hairline",
        "make movement joints a sixteenth of an inch (one millimetre) wide",
        set ->
            Defect.in(set)
                .edit(
                    "move.width",
                    text ->
                        metric(set, text)
                            ? text.replaceFirst("\\d+(?=( mm|$))", "1")
                            : text.replaceFirst("\\d/\\d+", "1/16"))
                .expect("movement-width")
                .aside("movement-class", "sealant-depth", "unit-slip"));
  }

  /** Wide enough for the tabulated spacing, and too narrow for the stated temperatures. */
  private static Operator narrowOutdoors() {
    return of(
        "movement-width-ignores-temperature",
        "give exterior joints the least tabulated width, 3/8 in (9.5 mm)",
        set -> {
          Set<String> outdoors = outdoors(set);
          return Defect.in(set)
              .editWhere(
                  statement ->
                      statement.label().equals("move.width")
                          && outdoors.containsAll(statement.tags()),
                  text ->
                      text.replaceFirst("\\b[1-5]/[28]", "3/8").replaceFirst("\\b16 mm", "9.5 mm"))
              .expect("movement-width");
        });
  }

  private static Set<String> outdoors(DraftSet set) {
    Set<String> tags = Needs.where(set, "location.exposure", EXTERIOR);
    tags.retainAll(Needs.where(set, "location.temperatureRange", Pattern.compile("\\d")));
    return tags;
  }

  private static Operator weakClass() {
    return of(
        "sealant-class-too-low",
        "specify a sealant of class 7.5",
        set ->
            Defect.in(set)
                .edit("sealant.class", text -> text.replaceAll("(?i)class [0-9/]+", "Class 7.5"))
                .expectAmong("movement-class", outdoors(set))
                .aside("movement-class", "movement-width"));
  }

  private static Operator federalSpecification() {
    return of(
        "sealant-federal-specification",
        "cite a cancelled federal specification for the sealant",
        set ->
            Defect.in(set)
                .edit("sealant.standard", text -> text.replace("ASTM C920", "FS TT-S-001543A"))
                .expect("joint-sealant")
                .expect("withdrawn-standard", Set.of())
                .aside("movement-class"));
  }

  private static Operator noMovement() {
    Operator all =
        of(
            "no-movement-joints",
            "delete everything on movement joints, leaving rigid grout alone",
            set ->
                Defect.in(set)
                    .delete("move.guide")
                    .delete("move.places")
                    .delete("move.spacing")
                    .delete("move.width")
                    .everywhere(MovementOperators::withoutGuide)
                    .expect("movement-guideline", set.tags("move.guide"))
                    .expect("movement-places", set.tags("move.places"))
                    .expect("movement-spacing", set.tags("move.spacing"))
                    .expect("movement-width", set.tags("move.width"))
                    .expect("grout-rigid", set.tags("move.guide"))
                    .aside("movement-class", "unresolved"));
    return when(all, MovementOperators::citesGuide);
  }

  /** Cells without a unit have it in their heading, so that the set decides. */
  private static boolean metric(DraftSet set, String text) {
    if (text.matches(".*(\\bmm\\b|\\d m\\b).*")) return true;
    return text.matches("\\d+(\\.\\d+)?")
        && set.statements("move.width").stream()
            .allMatch(statement -> statement.text().matches("\\d+"));
  }
}
