package clearbed.corpus;

import static clearbed.corpus.Operators.delete;
import static clearbed.corpus.Operators.deleteAmong;
import static clearbed.corpus.Operators.of;
import static clearbed.corpus.Operators.rewrite;

import java.util.List;

/** Defects of the grout. */
final class GroutOperators {
  private GroutOperators() {}

  static List<Operator> all() {
    return List.of(
        delete("grout-standard-deleted", "grout.standard", "grout-class", "grout-scratch"),
        of(
            "grout-sanded",
            "sand the grout and drop the words against scratching",
            set ->
                Defect.in(set)
                    .delete("grout.scratch")
                    .edit(
                        "grout.standard",
                        text ->
                            text.replaceAll("(?i),? ?unsanded", "")
                                .replaceFirst("(?i)A118\\.[37]", "$0, sanded"))
                    .expectAmong(
                        "grout-scratch",
                        Needs.where(
                            set, "grout.standard", java.util.regex.Pattern.compile("A118")))),
        delete("grout-width-deleted", "grout.width", "grout-width"),
        // The check asks it of grouts that set or must be cleaned quickly.
        deleteAmong(
            "grout-reach-deleted",
            "delete the limit on the area grouted at once",
            "grout.reach",
            "grout-reach",
            set ->
                Needs.where(
                    set,
                    "grout.standard",
                    java.util.regex.Pattern.compile("(?i)A118\\.3|epoxy|resin|rapid|\\bRG\\b"))),
        rewrite(
            "grout-reach-wide",
            "grout.reach",
            "Grout areas of up to 200 sq ft before cleaning.",
            "grout-reach"));
  }
}
