package clearbed.recognise.statement;

import clearbed.model.value.Content;

/** A stretch of a sentence, heading or cell that means something by itself; offsets are of it. */
public sealed interface Span {
  int start();

  int end();

  /**
   * A figure or a size with its units and what bounds it.
   *
   * @param restates true when it gives the figure before it in another unit
   */
  record Figure(int start, int end, Content content, boolean restates) implements Span {}

  /**
   * A number without a unit.
   *
   * @param dry true when it is of dry things alone
   */
  record Number(int start, int end, Content.Amount amount, boolean dry) implements Span {}

  /** A standard that is cited. */
  record Standard(int start, int end, Content.Standard standard) implements Span {}

  /** A class of a standard: {@code C2TES1}, {@code F-25LM}, {@code Class 25}, {@code R11}. */
  record ClassCode(int start, int end, String code) implements Span {}

  /** A product: a part of the work, glass tile, or a kind of other tile. */
  record Product(int start, int end, String kind) implements Span {}

  /**
   * A value that an attribute has words for.
   *
   * @param words how many
   */
  record Term(int start, int end, String attribute, String term, int words) implements Span {}

  /** A word that requires, permits, denies or excepts. */
  record Modality(int start, int end, String mode) implements Span {}
}
