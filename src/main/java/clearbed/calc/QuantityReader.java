package clearbed.calc;

import clearbed.model.Content;
import clearbed.model.Dimension;
import java.util.Optional;

/**
 * Understands a figure with its unit, as people write it: {@code 3/8 in}, {@code 12'-6"}, {@code 70
 * K}.
 */
@FunctionalInterface
public interface QuantityReader {

  /** The amount that the text states, or empty when it states none of that dimension. */
  Optional<Content.Amount> read(String text, Dimension dimension);
}
