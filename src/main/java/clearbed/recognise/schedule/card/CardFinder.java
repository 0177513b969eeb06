package clearbed.recognise.schedule.card;

import clearbed.model.document.Block;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.HeadingRows;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Finds cards on a grid: names with their values beside them, and the tile whose card it is. Cards
 * may stand below and beside one another; one may run over several pairs of columns. The mark
 * stands over the card, before its rows, or beside "Item" or "Code".
 */
public final class CardFinder {
  /** Fewer names to a card, in the mean, are none. */
  private static final int FEWEST_NAMES = 2;

  private static final int MOST_ROWS = 2_000;

  /**
   * @param above what stands over the first card, and is of none
   * @param below the same behind it
   * @param context what heads parts of cards or counts their rows
   */
  public record Found(
      List<Card> cards, List<Table.Row> above, List<Table.Row> below, List<Card.Said> context) {
    static final Found NONE = new Found(List.of(), List.of(), List.of(), List.of());
  }

  private final Vocabulary vocabulary;
  private final LabelColumns.Names names;

  public CardFinder(Vocabulary vocabulary, HeadingRows headings) {
    this.vocabulary = vocabulary;
    this.names = new LabelColumns.Names(headings, vocabulary);
  }

  /**
   * @param over the heading that the table stands under, or the tab of its sheet; may be empty
   */
  public Found on(Table table, String over, Origin overAt) {
    if (table.rows().size() > MOST_ROWS) return Found.NONE;
    Found facts = FactLines.of(table, names, vocabulary);
    if (!facts.cards().isEmpty()) return facts;
    Found across = CardColumns.of(table, names, vocabulary);
    if (!across.cards().isEmpty()) return across;
    CardTitle title = CardTitle.of(over, vocabulary);
    LabelColumns labels = LabelColumns.of(table, title != null, names, vocabulary);
    if (labels.at().isEmpty()) return Found.NONE;
    CardRows rows = new CardRows(table, labels, names, vocabulary);
    TreeSet<Integer> titled = rows.titledColumns();
    if (rows.isMarkedAcross() || rows.tellsChanges()) return Found.NONE;
    Map<Integer, CardBuilder> builders = new LinkedHashMap<>();
    if (titled.isEmpty()) {
      if (title == null) return Found.NONE;
      CardBuilder only = new CardBuilder(vocabulary);
      only.open(new Card.Said(title.mark(), "", overAt), titles(title, overAt));
      builders.put(labels.at().get(0), only);
    } else {
      for (int column : titled) builders.put(column, new CardBuilder(vocabulary));
    }
    rows.into(builders);
    List<Card> cards = builders.values().stream().flatMap(b -> b.cards().stream()).toList();
    int begun = builders.values().stream().mapToInt(CardBuilder::begun).sum();
    // Marks with nothing below them are rows of a list, and what stands between is no name.
    if (cards.size() * 2 <= begun) return Found.NONE;
    long known =
        cards.stream()
            .flatMap(card -> card.pairs().stream())
            .filter(pair -> labels.anyName() || names.are(LabelColumns.name(pair.name().text())))
            .count();
    return known < (long) FEWEST_NAMES * cards.size()
        ? Found.NONE
        : new Found(cards, rows.above(), rows.below(), rows.context());
  }

  /** Paragraphs that may be cards, by the index of the first. */
  public Map<Integer, CardLines.Run> lines(List<Block> blocks) {
    return CardLines.of(blocks, names, vocabulary);
  }

  static List<Card.Said> titles(CardTitle title, Origin at) {
    return title.isAlone() ? List.of() : List.of(new Card.Said(title.rest(), "", at));
  }
}
