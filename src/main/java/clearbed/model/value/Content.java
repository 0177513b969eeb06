package clearbed.model.value;

import java.util.List;
import java.util.stream.Collectors;

/** What a value says, once understood. {@link #text()} is its one canonical wording. */
public sealed interface Content {
  String text();

  /** A word of the vocabulary: {@code white}, {@code translucent}, {@code wet}. */
  record Term(String text) implements Content {}

  /**
   * A standard that is cited.
   *
   * @param designation canonical: {@code ANSI A118.4}, {@code ASTM C920}
   * @param edition year as written, or empty
   */
  record Standard(String designation, String edition) implements Content {
    @Override
    public String text() {
      return designation;
    }
  }

  /**
   * A figure or a range of figures.
   *
   * @param low and high are equal unless a range is written
   */
  record Amount(Quantity low, Quantity high, Bound bound) implements Content {
    public static Amount exact(Quantity quantity) {
      return new Amount(quantity, quantity, Bound.EXACT);
    }

    @Override
    public String text() {
      if (low.equals(high)) return bound.words() + low;
      return bound.words() + low + " to " + high;
    }
  }

  /** Lengths multiplied: {@code 12 in x 24 in x 8 mm}. */
  record Size(List<Quantity> sides) implements Content {
    public Size {
      sides = List.copyOf(sides);
    }

    @Override
    public String text() {
      return sides.stream().map(Quantity::toString).collect(Collectors.joining(" x "));
    }
  }

  /**
   * The documents require the thing named by the attribute, without a value to compare (a mock-up,
   * a submittal).
   */
  record Required() implements Content {
    @Override
    public String text() {
      return "required";
    }
  }

  /** Permitted deviations from a plane: {@code 1/4 in in 10 ft and 1/16 in in 12 in}. */
  record Flatness(List<Deviation> deviations) implements Content {
    public Flatness {
      deviations = List.copyOf(deviations);
    }

    @Override
    public String text() {
      return deviations.stream()
          .map(d -> d.deviation() + " in " + d.over())
          .collect(Collectors.joining(" and "));
    }
  }

  /**
   * One permitted deviation.
   *
   * @param deviation a length
   * @param over the length of the straightedge
   */
  record Deviation(Quantity deviation, Quantity over) {}

  /** Words that say that there is none of the thing: {@code none}, {@code not required, dry}. */
  record Absent(String text) implements Content {}

  /** Words that stand where a value belongs and were not understood further. */
  record Words(String text) implements Content {}

  /**
   * A figure that stands where a value belongs and may be read in two ways or in none: {@code 120 +
   * 80}, {@code 1.250}. It states something, but no number is taken from it.
   *
   * @param written the words, as they stand
   */
  record NotUnderstood(String written) implements Content {
    @Override
    public String text() {
      return "not understood: '" + written + "'";
    }
  }

  /**
   * A place where a value belongs and is left open: {@code TBD}, {@code [white] [grey]}, {@code
   * ____}.
   */
  record Open(String text) implements Content {}
}
