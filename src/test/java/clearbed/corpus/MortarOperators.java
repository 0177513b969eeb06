package clearbed.corpus;

import static clearbed.corpus.Operators.delete;
import static clearbed.corpus.Operators.deleteAmong;
import static clearbed.corpus.Operators.of;
import static clearbed.corpus.Operators.rewrite;
import static clearbed.corpus.Operators.swap;
import static clearbed.corpus.Operators.when;

import java.util.List;
import java.util.Set;

/** Defects of the mortar: its class, bond, colour, bed and membrane. */
final class MortarOperators {
  private static final String CEMENT = "A118\\.(15|4)\\b";

  private MortarOperators() {}

  static List<Operator> all() {
    return List.of(
        // What stood in the same sentence no longer says of which mortar it speaks.
        delete(
            "mortar-standard-deleted",
            "mortar.standard",
            "mortar-class",
            "backing",
            "mortar-colour",
            "bond-strength",
            "unread"),
        swap("mortar-dry-set", "mortar.standard", CEMENT, "A118.1", "mortar-class"),
        swap("mortar-class-one", "mortar.standard", "\\bC2(TE S1)?\\b", "C1", "mortar-class"),
        swap(
            "mortar-standard-mistyped",
            "mortar.standard",
            CEMENT,
            "A11.15",
            "mortar-class",
            "withdrawn-standard",
            "backing"),
        rewrite(
            "mortar-for-ceramic-only",
            "mortar.standard",
            "Mortar for ceramic tile floors: ANSI A118.15.",
            "mortar-class",
            "backing",
            "mortar-colour",
            "bond-strength",
            "unread"),
        organic(),
        delete("bond-deleted", "mortar.bond", "bond-strength"),
        weakBond(),
        // Classes of EN 12004 and ISO 13007 are of tension.
        when(
            swap(
                "bond-tensile",
                "mortar.bond",
                "(?i)shear( bond| adhesion)?( strength)?",
                "tensile bond strength",
                "bond-strength"),
            set -> !set.rules().equals("iso-en")),
        gray(),
        colourDeleted(),
        deleteAmong(
            "ridges-deleted",
            "delete that ridges are flattened",
            "mortar.ridges",
            "ridges",
            Needs::seeThrough),
        coverage("coverage-deleted", "", "^.*$"),
        coverage("coverage-lowered", "80 percent", "\\d+ ?(percent|%)( min(\\.|imum))?"),
        rewriteCoverage(),
        of(
            "organic-adhesive-permitted",
            "permit organic adhesive on walls",
            set ->
                Defect.in(set)
                    .rewrite(
                        "mortar.organic",
                        "Organic adhesive, ANSI A136.1, may be used for glass tile on walls.")
                    .expectAmong("organic-adhesive", wallsThatMind(set))
                    .aside("conflict", "mortar-class", "bond-strength", "mortar-colour")),
        delete("mortar-membrane-deleted", "mortar.membrane", "mortar-membrane"));
  }

  private static Set<String> wallsThatMind(DraftSet set) {
    Set<String> tags = Needs.wetOrSeeThrough(set);
    tags.retainAll(Needs.onWalls(set));
    return tags;
  }

  private static Operator organic() {
    return of(
        "mortar-organic",
        "set glass tile in organic adhesive",
        set ->
            Defect.in(set)
                .edit("mortar.standard", text -> text.replaceAll("A118\\.(15|4|3)\\b", "A136.1"))
                .expect("mortar-class")
                .expectAmong("organic-adhesive", Needs.wetOrSeeThrough(set))
                .aside("conflict", "backing", "mortar-colour"));
  }

  private static Operator weakBond() {
    return of(
        "bond-lowered",
        "lower every shear bond figure below 400 psi",
        set ->
            Defect.in(set)
                .edit(
                    "mortar.bond",
                    text ->
                        text.replaceAll("^\\d+$", "250")
                            .replaceAll("(?i)\\d+ (psi)", "250 $1")
                            .replaceAll("\\d\\.\\d+ (MPa|N/mm²)", "1.7 $1"))
                .expect("bond-strength"));
  }

  private static Operator gray() {
    return of(
        "mortar-gray",
        "write gray where mortar for glass tile is white",
        set ->
            Defect.in(set)
                .editWhere(
                    statement ->
                        statement.label().equals("mortar.colour")
                            || statement.label().equals("mortar.standard"),
                    text -> text.replaceAll("white", "gray").replaceAll("W(hite|HITE)", "Gray"))
                .expectAmong("mortar-colour", Needs.seeThrough(set))
                .aside("conflict"));
  }

  private static Operator colourDeleted() {
    return of(
        "mortar-colour-deleted",
        "delete every word on the colour of mortar for glass tile",
        set ->
            Defect.in(set)
                .delete("mortar.colour")
                .edit(
                    "mortar.standard",
                    text -> text.replaceAll(",? ?white\\b", "").replace(":,", ":"))
                .expectAmong("mortar-colour", Needs.seeThrough(set))
                .aside("unresolved"));
  }

  private static Operator coverage(String id, String words, String pattern) {
    return of(
        id,
        "in mortar.coverage put '" + words + "' for " + pattern,
        set ->
            Defect.in(set)
                .edit(
                    "mortar.coverage",
                    text -> text.replaceFirst("^.*$", text.replaceAll(pattern, words)))
                .expectAmong("coverage", Needs.wetOrSeeThrough(set))
                .aside("unresolved"));
  }

  private static Operator rewriteCoverage() {
    return of(
        "coverage-of-porcelain-only",
        "state coverage for porcelain tile alone",
        set ->
            Defect.in(set)
                .rewrite("mortar.coverage", "Mortar coverage behind porcelain tile: 95 percent.")
                .expectAmong("coverage", Needs.wetOrSeeThrough(set)));
  }
}
