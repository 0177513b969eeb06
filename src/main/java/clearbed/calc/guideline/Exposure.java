package clearbed.calc.guideline;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The surroundings that movement-joint guidelines tell apart. */
public enum Exposure {
  INTERIOR("interior"),
  /** A floor inside, where the guideline tells it from walls. */
  INTERIOR_FLOOR("interior floor"),
  /** A slab above ground inside, where the guideline tells it from others. */
  INTERIOR_ABOVE_GROUND("interior, slab above ground"),
  INTERIOR_SUN_OR_MOISTURE("interior, in sun or moisture"),
  EXTERIOR("exterior"),
  /** A deck open to the sky in a cold region. */
  EXTERIOR_COLD_DECK("exterior deck open to the sky, cold region");

  private final String label;

  Exposure(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }

  /** As written in files and on the command line: {@code interior-sun-or-moisture}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public static Optional<Exposure> of(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
    return Arrays.stream(values()).filter(e -> e.word().equals(wanted)).findFirst();
  }
}
