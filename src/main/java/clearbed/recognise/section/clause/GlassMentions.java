package clearbed.recognise.section.clause;

import clearbed.base.DisplayText;
import clearbed.base.Memo;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.statement.part.GlassWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds the places of a document that say that there is glass tile, read or not. */
public final class GlassMentions {
  /** As many as a message quotes, from one document. */
  private static final int MOST = 5;

  private static final int LONGEST = 120;

  private final Vocabulary vocabulary;
  private final GlassWords words;
  private final Memo<String, String> asserted = Memo.ofTexts();

  public GlassMentions(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.words = new GlassWords(vocabulary);
  }

  public List<Origin> in(Document document, List<Section> sections) {
    List<Origin> found = new ArrayList<>();
    Set<String> listed = listed(sections);
    for (Block block : document.blocks()) {
      if (found.size() >= MOST) break;
      if (block instanceof Table table) table(found, table);
      else if (block instanceof Paragraph p && !listed.contains(place(p.origin())))
        add(found, p.text(), p.origin());
    }
    return found;
  }

  /** References and related sections name what others say. */
  private Set<String> listed(List<Section> sections) {
    return sections.stream()
        .flatMap(section -> section.clauses().stream())
        .filter(this::lists)
        .map(clause -> place(clause.origin()))
        .collect(Collectors.toSet());
  }

  /** A clause is told from others of its document by page and paragraph. */
  private static String place(Origin origin) {
    return origin.page() + "/" + origin.paragraph();
  }

  private void table(List<Origin> found, Table table) {
    for (Table.Row row : table.rows()) {
      for (Table.Cell cell : row.cells()) {
        if (found.size() >= MOST) return;
        if (!cell.continued()) add(found, cell.text(), table.origin(cell));
      }
    }
  }

  private boolean lists(Clause clause) {
    return clause.listsReferences()
        || vocabulary.list("references").matches(clause.heading().toLowerCase(Locale.ROOT).trim());
  }

  private void add(List<Origin> found, String text, Origin origin) {
    if (found.size() >= MOST || text.isBlank()) return;
    String said = asserted.get(text, () -> said(text));
    if (!said.isEmpty()) found.add(origin.withText(said));
  }

  private String said(String text) {
    String part = words.asserted(text);
    if (part == null) return "";
    return DisplayText.shortened(part, LONGEST);
  }
}
