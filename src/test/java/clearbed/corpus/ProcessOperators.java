package clearbed.corpus;

import static clearbed.corpus.Operators.delete;
import static clearbed.corpus.Operators.deleteAmong;
import static clearbed.corpus.Operators.of;
import static clearbed.corpus.Operators.rewrite;

import java.util.List;

/** Defects of how the work is to be prepared, tried, done and cleaned. */
final class ProcessOperators {
  private ProcessOperators() {}

  static List<Operator> all() {
    return List.of(
        delete("mockup-deleted", "mockup", "mockup"),
        rewrite(
            "mockup-not-required", "mockup", "Mock-ups of glass tile are not required.", "mockup"),
        rewrite(
            "mockup-of-porcelain",
            "mockup",
            "Build a mock-up of the porcelain tile floor, 100 sq ft, before floor tile is laid.",
            "mockup"),
        of(
            "submittals-deleted",
            "delete every submittal",
            set ->
                Defect.in(set)
                    .delete("submittals")
                    .delete("tile.suitability")
                    .delete("membrane.letter")
                    .delete("mortar.membrane")
                    .delete("coated.letter")
                    .expect("submittals", set.tags("submittals"))
                    .aside("membrane", "mortar-membrane", "suitability", "cold-coated-wet")),
        delete("instructions-deleted", "instructions", "instructions"),
        delete("temperature-deleted", "temperature", "temperature"),
        rewrite(
            "temperature-cold",
            "temperature",
            "Do not set tile when the temperature is below 32 deg F.",
            "temperature"),
        delete("cure-before-grout-deleted", "cure.grout", "cure-before-grout"),
        rewrite(
            "cure-before-grout-same-day",
            "cure.grout",
            "Grout on the day the tile is set.",
            "cure-before-grout"),
        deleteAmong(
            "cure-before-water-deleted",
            "delete the wait before water",
            "cure.water",
            "cure-before-water",
            Needs::wet),
        delete("cleaning-deleted", "cleaning", "cleaning"),
        rewrite(
            "cleaning-with-acid",
            "cleaning",
            "Clean glass tile with dilute muriatic acid and rinse.",
            "cleaning"),
        delete("cutting-deleted", "cutting", "cutting-safety"));
  }
}
