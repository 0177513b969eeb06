package clearbed.recognise.schedule.card;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Cards as a schedule: their names over the columns, a row for each card. Cells keep their places
 * in the document.
 *
 * @param names the row of the headings
 * @param cards the rows of the cards
 * @param context rows of what was said for cards to be read, and is no value
 * @param table the rows that stand over the cards, those of the cards, and those below them
 * @param first index of the first card in the table
 */
public record CardTable(
    Table.Row names, List<Table.Row> cards, List<Table.Row> context, Table table, int first) {
  private static final String MARK = "Mark";
  private static final String DESCRIPTION = "Description";

  public static CardTable of(CardFinder.Found found, Table grid) {
    return new Making(grid).of(found);
  }

  private static final class Making {
    private final Table grid;
    private final Map<Table.Place, Origin> apart = new HashMap<>();
    private final List<String> labels = new ArrayList<>();
    private final List<Card.Said> headed = new ArrayList<>();
    private int row = 1;

    Making(Table grid) {
      this.grid = grid;
    }

    CardTable of(CardFinder.Found found) {
      int titles = found.cards().stream().mapToInt(card -> card.title().size()).max().orElse(0);
      List<Map<String, Card.Pair>> said = new ArrayList<>();
      for (Card card : found.cards()) said.add(labelled(card));
      List<Table.Row> rows = new ArrayList<>();
      for (Table.Row loose : found.above()) rows.add(moved(loose));
      int first = rows.size();
      List<Table.Row> cards = new ArrayList<>();
      for (int i = 0; i < found.cards().size(); i++)
        cards.add(card(found.cards().get(i), said.get(i), titles));
      rows.addAll(cards);
      row++;
      for (Table.Row loose : found.below()) rows.add(moved(loose));
      List<Table.Row> context = new ArrayList<>();
      Table.Row names = names(titles);
      for (Card card : found.cards())
        for (Card.Pair pair : card.pairs()) context.add(single(pair.name()));
      for (Card.Said words : found.context()) context.add(single(words));
      return new CardTable(
          names, cards, context, new Table(grid.origin(), rows, grid.sheet(), false, apart), first);
    }

    /** The pairs of a card by their columns: a name that comes again heads another. */
    private Map<String, Card.Pair> labelled(Card card) {
      Map<String, Card.Pair> out = new HashMap<>();
      int behind = 0;
      for (Card.Pair pair : card.pairs()) {
        String name = pair.label().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
        String key = name;
        for (int copy = 2; out.containsKey(key); copy++) key = name + " " + copy;
        out.put(key, pair);
        int known = labels.indexOf(key);
        if (known < 0) {
          labels.add(behind, key);
          headed.add(behind, pair.name().withText(pair.label()));
          known = behind;
        }
        behind = known + 1;
      }
      return out;
    }

    private Table.Row card(Card card, Map<String, Card.Pair> said, int titles) {
      row++;
      List<Table.Cell> cells = new ArrayList<>();
      cells.add(cell(0, card.mark()));
      for (int i = 0; i < card.title().size(); i++) cells.add(cell(1 + i, card.title().get(i)));
      for (int i = 0; i < labels.size(); i++) {
        Card.Pair pair = said.get(labels.get(i));
        if (pair != null) cells.add(cell(1 + titles + i, pair.value()));
      }
      return new Table.Row(row, cells, false);
    }

    private Table.Row names(int titles) {
      row++;
      List<Table.Cell> cells = new ArrayList<>();
      cells.add(Table.Cell.of(row, 0, MARK));
      if (titles > 0) cells.add(Table.Cell.of(row, 1, DESCRIPTION));
      for (int i = 0; i < headed.size(); i++) cells.add(cell(1 + titles + i, headed.get(i)));
      return new Table.Row(row, cells, false);
    }

    private Table.Row single(Card.Said words) {
      row++;
      return new Table.Row(row, List.of(cell(0, words)), false);
    }

    private Table.Row moved(Table.Row from) {
      row++;
      List<Table.Cell> cells = new ArrayList<>();
      for (Table.Cell cell : from.cells())
        cells.add(
            cell(cell.column(), new Card.Said(cell.text(), cell.remark(), grid.origin(cell))));
      return new Table.Row(row, cells, from.hidden());
    }

    private Table.Cell cell(int column, Card.Said said) {
      apart.put(new Table.Place(row, column), said.at());
      return new Table.Cell(column, 1, false, said.text(), said.remark(), row, 0);
    }
  }
}
