package clearbed.recognise.schedule.card;

import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Gathers the cards that stand one below the other. */
final class CardBuilder {
  /** Words of a line that heads a part of a card. */
  private static final int MOST_WORDS = 3;

  private final Vocabulary vocabulary;
  private final Map<String, Card> cards = new LinkedHashMap<>();
  private Card open;
  private String part = "";

  CardBuilder(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** Begins a card, or goes on with that of the same mark. */
  void open(Card.Said mark, List<Card.Said> title) {
    open =
        cards.computeIfAbsent(
            Tags.key(mark.text()), any -> new Card(mark, new ArrayList<>(), new ArrayList<>()));
    open.title().addAll(title);
    part = "";
  }

  boolean isOpen() {
    return open != null;
  }

  boolean isOf(String mark) {
    return open != null && Tags.key(open.mark().text()).equals(Tags.key(mark));
  }

  boolean isEmpty() {
    return open == null || open.pairs().isEmpty();
  }

  /** A line that heads what stands below it on the card: "GROUT" over "Colour | White". */
  void part(String words) {
    boolean few = words.split("\\s+").length <= MOST_WORDS;
    String family = few ? vocabulary.family(words) : "";
    part = WorkFamilies.PARTS.contains(family) ? family + " " : "";
  }

  void add(Card.Said name, String label, Card.Said value) {
    String of = part.isEmpty() || !isOfPart(label) ? "" : part;
    open.pairs().add(new Card.Pair(name, of + label, value));
  }

  /** "Colour" and "Standard" in the part on grout, but not "Location". */
  private boolean isOfPart(String label) {
    if (!vocabulary.family(label).isEmpty()) return false;
    Header.Column whole = HeadingWords.named(vocabulary, part + label);
    if (whole == null) return HeadingWords.named(vocabulary, label) == null;
    return whole.attribute().family().equals(part.strip());
  }

  /** What goes on below a value. */
  void more(Card.Said value) {
    int last = open.pairs().size() - 1;
    if (last < 0) {
      open.title().add(value);
      return;
    }
    Card.Pair pair = open.pairs().get(last);
    Card.Said whole =
        pair.value().isBlank()
            ? value
            : pair.value().withText(pair.value().text() + "\n" + value.text());
    open.pairs().set(last, new Card.Pair(pair.name(), pair.label(), whole));
  }

  /** How many were begun, with what stands below them or without. */
  int begun() {
    return cards.size();
  }

  /** Those of which anything is said. */
  List<Card> cards() {
    return cards.values().stream().filter(card -> !card.pairs().isEmpty()).toList();
  }
}
