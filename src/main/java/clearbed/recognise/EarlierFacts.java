package clearbed.recognise;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.taught.Lessons;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Facts of an earlier reading that stand though marks were learned since: those of documents that
 * have none of the marks.
 */
public final class EarlierFacts {
  static final EarlierFacts NONE = new EarlierFacts(List.of(), Lessons.NOTHING);

  private final Map<String, Facts> byPath = new HashMap<>();
  private final List<String> marks;

  /**
   * @param facts of the earlier reading
   * @param lessons learned since
   */
  public EarlierFacts(List<Facts> facts, Lessons lessons) {
    this.marks = lessons.words().stream().map(word -> word.toUpperCase(Locale.ROOT)).toList();
    Set<String> several = new HashSet<>();
    for (Facts f : facts) {
      // Below two arguments two documents may have one path.
      if (byPath.putIfAbsent(f.document().path(), f) != null) several.add(f.document().path());
    }
    byPath.keySet().removeAll(several);
  }

  /** The facts of a document, or null where it is to be read for them anew. */
  Facts of(Document document) {
    Facts kept = byPath.get(document.path());
    if (kept == null || kept.document().status() == Document.Status.UNREADABLE) return null;
    boolean marked = isMarked(document.path()) || document.blocks().stream().anyMatch(this::isIn);
    return marked ? null : kept;
  }

  private boolean isIn(Block block) {
    if (block instanceof Paragraph p)
      return isIn(p.origin()) || isMarked(p.label()) || isMarked(p.text());
    return block instanceof Table t && (isIn(t.origin()) || t.rows().stream().anyMatch(this::isIn));
  }

  private boolean isIn(Origin origin) {
    return isMarked(origin.sheet()) || isMarked(origin.heading());
  }

  private boolean isIn(Table.Row row) {
    for (Table.Cell cell : row.cells())
      if (isMarked(cell.text()) || isMarked(cell.remark())) return true;
    return false;
  }

  private boolean isMarked(String text) {
    if (text == null) return false;
    String capitals = PlainText.of(text).toUpperCase(Locale.ROOT);
    for (String mark : marks) if (capitals.contains(mark)) return true;
    return false;
  }
}
