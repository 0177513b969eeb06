package clearbed.corpus;

import static clearbed.corpus.Operators.delete;
import static clearbed.corpus.Operators.deleteAmong;
import static clearbed.corpus.Operators.firstCell;
import static clearbed.corpus.Operators.of;
import static clearbed.corpus.Operators.swap;
import static clearbed.corpus.Operators.when;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** Defects of the tile itself: its standard, make, size, back and mounting. */
final class TileOperators {
  private static final Pattern PENDULUM = Pattern.compile("(?i)\\b(?:PTV|pendulum)\\b");
  private static final Pattern BAREFOOT_CLASS =
      Pattern.compile("(?<=(?:/|[Cc]lass) ?)[BC](?![\\w+])");

  private TileOperators() {}

  static List<Operator> all() {
    return List.of(
        // Neither ISO nor EN has a standard for glass tile: there the maker's word stands in for
        // it.
        when(
            delete("tile-standard-deleted", "tile.standard", "tile-standard", "suitability"),
            TileOperators::wantsStandard),
        swap(
            "tile-standard-ceramic",
            "tile.standard",
            "A137\\.2",
            "A137.1",
            "tile-standard",
            "suitability"),
        when(
            swap(
                "tile-standard-mistyped",
                "tile.standard",
                "A137\\.2",
                "A173.2",
                "tile-standard",
                "suitability",
                "withdrawn-standard"),
            TileOperators::wantsStandard),
        when(
            of(
                "tile-standard-and-letter-deleted",
                "delete the tile standard and the maker's confirmation",
                set ->
                    Defect.in(set)
                        .delete("tile.standard")
                        .delete("tile.suitability")
                        .expect("tile-standard")
                        .expect("suitability")
                        .aside("unresolved")),
            set -> !set.statements("tile.suitability").isEmpty()),
        // By ISO and EN it is asked only where a coating may be, and a bare back has none.
        when(
            firstCell(
                "tile-kind-dropped",
                "tile.description",
                "(?i)^(Cast|Fused|Low-temperature coated) (g.*)$",
                "$2",
                "tile-kind"),
            set -> !set.rules().equals("iso-en")),
        firstCell("tile-size-blank", "tile.size", "^.+$", "", "tile-size", "unresolved"),
        firstCell(
            "translucency-blank", "tile.translucency", "^.+$", "", "translucency", "unresolved"),
        firstCell("backing-blank", "tile.backing", "^.+$", "", "tile-backing-stated", "unresolved"),
        metallicWet(),
        paintedDry(),
        delete("freeze-test-deleted", "test.freeze", "freeze-thaw"),
        delete("thermal-shock-test-deleted", "test.shock", "thermal-shock"),
        delete("slip-test-deleted", "test.slip", "floor-slip"),
        swap("slip-figure-lowered", "test.slip", "0\\.42", "0.30", "floor-slip"),
        swap(
            "pendulum-value-lowered",
            "test.slip",
            "(?<=(?i:PTV|pendulum)\\D{0,60})\\b(?:3[6-9]|4\\d)\\b",
            "24",
            "floor-slip"),
        slipTestOnly(),
        barefootClass(),
        deleteAmong(
            "coated-letter-deleted",
            "delete every statement of coated.letter",
            "coated.letter",
            "cold-coated-wet",
            Needs::wet,
            "unresolved",
            "suitability",
            "cold-coated-wet"),
        deleteAmong(
            "mesh-water-deleted",
            "delete that the sheet mounting is water-resistant",
            "mount.water",
            "mesh-water",
            Needs::wet,
            "mesh-mortar"),
        // Epoxy does no harm to the glue of a mesh.
        deleteAmong(
            "mounting-compatibility-deleted",
            "delete every statement of mount.mortar",
            "mount.mortar",
            "mesh-mortar",
            Needs::inCement,
            "unresolved",
            "mesh-mortar"),
        delete("face-mounting-standard-deleted", "mount.face", "paper-face"));
  }

  private static boolean wantsStandard(DraftSet set) {
    return !set.rules().equals("iso-en") || set.statements("tile.suitability").isEmpty();
  }

  private static Operator slipTestOnly() {
    return when(
        of(
            "slip-value-left-out",
            "name a test of slip resistance and leave out what it is to give",
            set ->
                Defect.in(set)
                    .edit(
                        "test.slip",
                        text -> text.isBlank() ? text : "Slip resistance tested to BS EN 16165.")
                    .expect("floor-slip")),
        set -> set.rules().equals("iso-en"));
  }

  /** Where a pendulum value is stated it speaks for the floor, whatever the class. */
  private static Operator barefootClass() {
    return of(
        "barefoot-class-lowered",
        "put class A for the barefoot class of floors without a pendulum value",
        set -> {
          Set<String> classed = Needs.where(set, "test.slip", BAREFOOT_CLASS);
          classed.removeAll(Needs.where(set, "test.slip", PENDULUM));
          return Defect.in(set)
              .edit("test.slip", text -> BAREFOOT_CLASS.matcher(text).replaceAll("A"))
              .expectAmong("floor-slip", classed)
              .aside("floor-slip");
        });
  }

  private static Operator metallicWet() {
    return of(
        "metallic-backing-in-wet-cement",
        "give the first wet tile that is set in cement mortar a metallic back",
        set ->
            Defect.in(set)
                .firstCell(
                    "tile.backing",
                    cell ->
                        Needs.wet(set).containsAll(cell.tags())
                            && Needs.inCement(set).containsAll(cell.tags()),
                    text -> "Metallic")
                .expect("backing"));
  }

  private static Operator paintedDry() {
    return of(
        "painted-backing-in-dry-cement",
        "give the first dry tile that is set in cement mortar a painted back",
        set ->
            Defect.in(set)
                .firstCell(
                    "tile.backing",
                    cell ->
                        !Needs.wet(set).containsAll(cell.tags())
                            && Needs.inCement(set).containsAll(cell.tags()),
                    text -> "Painted")
                .expect("backing"));
  }
}
