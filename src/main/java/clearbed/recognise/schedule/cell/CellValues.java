package clearbed.recognise.schedule.cell;

import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.List;
import java.util.function.Predicate;

/** Whether a cell has a value of the kind that its heading asks for, by its form alone. */
public final class CellValues {
  private final Phrases open;
  private final Phrases empty;

  public CellValues(Vocabulary vocabulary) {
    this.open = vocabulary.list("open");
    this.empty = vocabulary.list("empty");
  }

  /**
   * True when there is one and none of the statements read it.
   *
   * @param text with the unit of the heading
   * @param found what was read of the cell
   */
  public boolean unread(Attribute attribute, String text, List<Statement> found) {
    if (open.in(text)) return none(found, s -> s.isOpen());
    return switch (attribute.kind()) {
      case STANDARD ->
          !Citations.find(text).isEmpty()
              && none(found, s -> s.content() instanceof Content.Standard);
      case TERM ->
          attribute.words().anyTerm().in(text)
              && none(found, s -> s.attribute().equals(attribute.id()));
      case AMOUNT ->
          attribute.dimension() == Dimension.RATIO
              ? found.isEmpty() && text.chars().anyMatch(Character::isDigit)
              : Quantities.find(text).stream().anyMatch(q -> fits(attribute, q.content()))
                  && none(found, s -> s.content() instanceof Content.Amount);
      case SIZE ->
          Quantities.find(text).stream().anyMatch(q -> fits(attribute, q.content()))
              && none(found, s -> s.content() instanceof Content.Size);
      case FLATNESS ->
          !Quantities.find(text).isEmpty()
              && none(found, s -> s.content() instanceof Content.Flatness);
      case REQUIRED ->
          !text.isBlank()
              && !empty.matches(text.trim())
              && none(found, s -> s.attribute().equals(attribute.id()));
      case WORDS -> false;
    };
  }

  private static boolean none(List<Statement> found, Predicate<Statement> read) {
    return found.stream().noneMatch(read);
  }

  private static boolean fits(Attribute attribute, Content content) {
    if (attribute.kind() == Attribute.Kind.SIZE) return content instanceof Content.Size;
    return content instanceof Content.Amount amount
        && Quantities.as(amount, attribute.dimension()).filter(attribute::accepts).isPresent();
  }
}
