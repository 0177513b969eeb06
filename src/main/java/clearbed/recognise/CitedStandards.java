package clearbed.recognise;

import clearbed.base.Memo;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Placed;
import clearbed.model.document.Table;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Citation;
import clearbed.recognise.statement.code.Citations;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The standards that a document cites, each where it stands. */
final class CitedStandards {
  private final Memo<String, List<Citations.Found>> cited = Memo.ofTexts();

  /**
   * @param cards paragraphs of names and values
   */
  List<Citation> in(Document document, List<Table> cards, Collected c) {
    List<Citation> out = new ArrayList<>();
    Set<Origin> lists = new HashSet<>();
    for (Section section : c.sections) {
      for (Clause clause : section.clauses()) {
        boolean listed = clause.listsReferences();
        if (listed && clause.origin().cell() != null) lists.add(cell(clause.origin()));
        for (Citations.Found f : cited(clause.text()))
          out.add(new Citation(f.standard(), f.asWritten(), clause.origin(), listed));
      }
    }
    for (Block block : Stream.concat(document.blocks().stream(), cards.stream()).toList()) {
      if (block instanceof Table written) {
        Table t = c.underTitles.getOrDefault(written, written);
        for (Table.Row row : t.rows()) {
          // "ASTM C920 | Sealants": a row of a list of standards asks for none of them.
          boolean listed =
              !lists.isEmpty()
                  && row.cells().stream().anyMatch(own -> lists.contains(cell(t.origin(own))));
          for (Table.Cell cell : row.cells()) {
            for (Citations.Found f : cited(cell.text()))
              out.add(new Citation(f.standard(), f.asWritten(), t.origin(cell), listed));
          }
        }
      }
    }
    Placed.Placing<Citation> place = new Placed.Placing<>(Citation::origin, Citation::at);
    return new Placed.Packer<>(place, out.size()).pack(out);
  }

  /** The place of a cell, whatever stands in it. */
  private static Origin cell(Origin origin) {
    return origin.withHeading(null).withText(null);
  }

  private List<Citations.Found> cited(String text) {
    if (!Citations.mayCite(text)) return List.of();
    return cited.get(text, () -> List.copyOf(Citations.find(text)));
  }
}
