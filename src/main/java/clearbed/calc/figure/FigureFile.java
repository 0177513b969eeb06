package clearbed.calc.figure;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.recognise.text.Quantities;
import java.util.Locale;
import java.util.Optional;

/** Figures with units in files of figures. */
public final class FigureFile {
  private FigureFile() {}

  /** One figure above zero. */
  public static Quantity positive(ConfigNode node, Dimension dimension) throws ConfigException {
    String written = node.path() + ": '" + node.text() + "'";
    Optional<Content.Amount> amount = Quantities.parse(node.text(), dimension);
    if (amount.isEmpty())
      throw node.fault(
          written
              + " is no "
              + dimension.name().toLowerCase(Locale.ROOT).replace('_', ' ')
              + " with a unit");
    Interval interval = Interval.of(amount.get());
    if (!interval.isExact()) throw node.fault(written + " is a range; give one figure");
    if (interval.low().number() <= 0) throw node.fault(written + " must be above zero");
    return interval.low();
  }
}
