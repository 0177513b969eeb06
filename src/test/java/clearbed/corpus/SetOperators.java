package clearbed.corpus;

import static clearbed.corpus.Operators.firstCell;
import static clearbed.corpus.Operators.of;
import static clearbed.corpus.Operators.rewrite;
import static clearbed.corpus.Operators.swap;
import static clearbed.corpus.Operators.when;

import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Defects of the set as a whole: contradictions, things left open, references that lead nowhere.
 */
final class SetOperators {
  private SetOperators() {}

  static List<Operator> all() {
    return List.of(
        conflict("conflict-grout-width", "grout.width", "grout joint 1/4 in.", "grout-width"),
        conflict(
            "conflict-mortar",
            "mortar.standard",
            "mortar to ANSI A118.11.",
            "mortar-class",
            "backing"),
        conflict("conflict-size", "tile.size", "nominal size 7 in x 9 in.", "tile-size"),
        conflict(
            "conflict-bond", "mortar.bond", "shear bond strength 900 psi minimum.", "unit-slip"),
        swap(
            "bracket-mortar",
            "mortar.standard",
            "(ANSI )?A118\\.(15|4)\\b",
            "[ANSI A118.4] [ANSI A118.15]",
            "unresolved",
            "mortar-class",
            "conflict",
            "backing"),
        firstCell("tbd-grout-width", "grout.width", "^.+$", "TBD", "unresolved", "grout-width"),
        firstCell(
            "verify-translucency",
            "tile.translucency",
            "^.+$",
            "Verify with sample",
            "unresolved",
            "translucency",
            "vague"),
        when(
            rewrite(
                "blank-bond",
                "mortar.bond",
                "Shear bond strength of mortar to glass tile: ____ psi minimum.",
                "unresolved",
                "bond-strength"),
            set -> clauses(set, "mortar.bond") == 1),
        when(
            rewrite(
                "spacing-to-be-determined",
                "move.spacing",
                "at a spacing to be determined.",
                "unresolved",
                "movement-spacing",
                "movement-width"),
            set -> clauses(set, "move.spacing") == 1),
        of(
            "sealant-or-as-approved",
            "let another sealant be approved in place of the standard",
            set ->
                Defect.in(set)
                    .edit(
                        "sealant.standard",
                        text ->
                            text.replaceAll(
                                "(ASTM C920|ISO 11600),?$", "$1, or as approved by the Architect,"))
                    .expect("unresolved", Set.of())
                    .aside("vague", "joint-sealant")),
        of(
            "vague-mortar",
            "call the mortar suitable in place of a standard",
            set ->
                Defect.in(set)
                    .rewrite(
                        "mortar.standard",
                        "Mortar for glass tile: a suitable mortar, of approved type, as required.")
                    .expect("mortar-class")
                    .expect("vague", Set.of())
                    .aside("unresolved", "backing", "mortar-colour", "unread")),
        added(
            "dangling-section",
            "Coordinate glass tile with the work of Section 08 81 13.",
            "dangling-reference",
            set -> true),
        added(
            "dangling-detail",
            "Finish the top edge of glass tile as shown in detail 9/A-990.",
            "dangling-reference",
            set -> true),
        of(
            "unlisted-standard",
            "cite a standard that the references article does not list",
            set ->
                hasReferences(set)
                    ? Defect.in(set)
                        .edit(
                            "cleaning",
                            text -> text + " Test stain resistance of grout to ASTM C1378.")
                        .expect("unlisted-standard", Set.of())
                    : Defect.in(set)),
        of(
            "unused-standard",
            "list a standard that nothing cites",
            set ->
                Defect.in(set)
                    .appendReference("ASTM C650, resistance of ceramic tile to chemicals.")
                    .expect("unused-standard", Set.of())),
        added(
            "withdrawn-friction-test",
            "Walking surfaces: static coefficient of friction 0.60 wet, ASTM C1028.",
            "withdrawn-standard",
            set -> true),
        unitSlip(),
        of(
            "unscheduled-tag",
            "give an instruction for a tag that no schedule has",
            set -> {
              String tag = sibling(set, "77");
              return Defect.in(set)
                  .append(tag + ": set glass tile with vertical joints aligned.")
                  .expect("unscheduled-tag", Set.of())
                  .stranger(tag);
            }),
        when(
            of(
                "unspecified-tag",
                "schedule a glass tile that no section names, in a set that names tags",
                set -> {
                  String tag = sibling(set, "88");
                  return Defect.in(set)
                      .addRow(tag)
                      .expect("unspecified-tag", Set.of())
                      .stranger(tag);
                }),
            SetOperators::sectionNamesTags));
  }

  private static Operator conflict(String id, String label, String words, String... aside) {
    return of(
        id,
        "say in another place: " + words,
        set -> {
          Defect defect = Defect.in(set);
          List<Statement> stated = set.statements(label);
          if (stated.isEmpty()) return defect;
          String tag =
              set.glass().stream().filter(stated.get(0).tags()::contains).findFirst().orElseThrow();
          return defect
              .append(tag + ": " + words)
              .expect("conflict", Set.of(tag))
              .aside(aside)
              .aside("sealant-depth");
        });
  }

  private static Operator added(String id, String words, String check, Predicate<DraftSet> fits) {
    return when(
        of(
            id,
            "add: " + words,
            set -> Defect.in(set).append(words).expect(check, Set.of()).aside("floor-slip")),
        fits);
  }

  private static Operator unitSlip() {
    return of(
        "unit-slip-bond",
        "let the two units of the bond figure disagree",
        set ->
            Defect.in(set)
                .edit(
                    "mortar.bond",
                    text ->
                        text.replaceAll("\\(\\d\\.\\d+ MPa\\)", "(4.9 MPa)")
                            .replaceAll("\\(\\d+ psi\\)", "(620 psi)"))
                .expect("unit-slip", Set.of())
                .aside("conflict"));
  }

  /**
   * How many clauses state it; a rewriting of one of several would leave the others' entries bare.
   */
  private static long clauses(DraftSet set, String label) {
    return set.statements(label).stream().filter(statement -> !statement.isCell()).count();
  }

  private static boolean hasReferences(DraftSet set) {
    return set.outlines().stream()
        .flatMap(outline -> outline.clauses().stream())
        .anyMatch(clause -> clause.depth() == 1 && clause.text().equalsIgnoreCase("references"));
  }

  private static boolean sectionNamesTags(DraftSet set) {
    String first = set.glass().iterator().next();
    return set.statements("tile.standard").stream()
        .anyMatch(statement -> !statement.isCell() && statement.text().contains(first));
  }

  /** A tag in the manner of the set's own: GT-1 gives GT-77, GL.01 gives GL.77, GT-A gives GT-Z. */
  private static String sibling(DraftSet set, String number) {
    String first = set.glass().iterator().next();
    if (first.matches(".*\\d")) return first.replaceFirst("\\d+$", number);
    return first.replaceFirst("[A-Z]$", number.equals("77") ? "Y" : "Z");
  }
}
