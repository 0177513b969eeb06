package clearbed.corpus;

import static clearbed.corpus.Operators.delete;
import static clearbed.corpus.Operators.deleteAmong;
import static clearbed.corpus.Operators.firstCell;
import static clearbed.corpus.Operators.of;
import static clearbed.corpus.Operators.rewrite;

import java.util.List;

/** Defects of what the tile is set on. */
final class SubstrateOperators {
  private SubstrateOperators() {}

  static List<Operator> all() {
    return List.of(
        firstCell("substrate-blank", "sub.type", "^.+$", "", "substrate-stated", "unresolved"),
        delete("flatness-deleted", "sub.flatness", "flatness"),
        of(
            "flatness-coarse",
            "allow three quarters of an inch in ten feet",
            set ->
                Defect.in(set)
                    .edit(
                        "sub.flatness",
                        text ->
                            text.replaceAll("1/[48] (in|IN|inch)\\b", "3/4 $1")
                                .replaceAll("\\b6 mm in 3 m", "20 mm in 3 m")
                                .replaceAll("\\b3 mm\\b", "12 mm"))
                    .expect("flatness")),
        deleteAmong(
            "deflection-deleted",
            "delete the limit of deflection",
            "sub.deflection",
            "deflection",
            Needs::onSpans),
        of(
            "deflection-soft",
            "let the substrate deflect by L/240",
            set ->
                Defect.in(set)
                    .edit("sub.deflection", text -> text.replaceAll("(L|span)/480", "$1/240"))
                    .expectAmong("deflection", Needs.onSpans(set))),
        deleteAmong(
            "patch-deleted",
            "delete that the whole area is patched",
            "sub.patch",
            "patch-whole-area",
            Needs::seeThrough),
        rewrite(
            "patch-spots",
            "sub.patch",
            "Fill low spots behind translucent and transparent tile with patching compound.",
            "patch-whole-area"),
        // The check asks for a membrane where it is wet inside; outside is the wall's own affair.
        deleteAmong(
            "membrane-deleted",
            "delete the waterproof membrane",
            "membrane.standard",
            "membrane",
            Needs::wetInside,
            "unresolved",
            "mortar-membrane"),
        delete("membrane-letter-deleted", "membrane.letter", "membrane", "suitability"),
        delete("crack-isolation-deleted", "membrane.crack", "crack-isolation"));
  }
}
