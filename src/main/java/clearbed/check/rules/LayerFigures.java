package clearbed.check.rules;

import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.text.Numbers;
import clearbed.recognise.text.Quantities;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Brings the figure that a layer asks for into words that were written for the figure before it, in
 * the units that they are written in.
 *
 * @param before the figure that the words were written for, such as {@code 400 psi}
 * @param now the one that is asked for
 * @param above true where more than the figure is asked for, and the words say "or more"
 */
record LayerFigures(Quantity before, Quantity now, boolean above) {
  /** A figure in another unit is rounded: 400 psi is written 2.76 MPa. */
  private static final double ROUNDED = 0.01;

  private static final Set<String> LIMITS = Set.of("above", "atLeast", "atMost");
  private static final Pattern NUMBER = Pattern.compile(Numbers.PATTERN);
  private static final Pattern OR_MORE = Pattern.compile("\\u0001([^\\u0001]*)\\u0002 or more");

  /** Null where one of the two is no limit by a figure of the same kind. */
  static LayerFigures of(LayeredCheck.Expected before, LayeredCheck.Expected now) {
    if (!LIMITS.contains(before.kind()) || !LIMITS.contains(now.kind())) return null;
    if (before.kind().equals("atMost") != now.kind().equals("atMost")) return null;
    Quantity old = figure(before.text());
    Quantity wanted = figure(now.text());
    boolean same = old != null && wanted != null && sameKind(old.unit(), wanted.unit());
    if (!same) return null;
    return new LayerFigures(
        old, wanted, now.kind().equals("above") && before.kind().equals("atLeast"));
  }

  private static Quantity figure(String text) {
    List<Quantities.Found> found = Quantities.find(text);
    return found.size() == 1 ? exact(found.get(0)) : null;
  }

  private static Quantity exact(Quantities.Found found) {
    return found.content() instanceof clearbed.model.value.Content.Amount amount
            && amount.low().equals(amount.high())
        ? amount.low()
        : null;
  }

  private static boolean sameKind(Unit one, Unit other) {
    return one.dimension() == other.dimension();
  }

  /** The words with the new figure wherever they have the old one. */
  String in(String words) {
    StringBuilder out = new StringBuilder();
    int from = 0;
    for (Quantities.Found found : Quantities.find(words)) {
      Quantity there = exact(found);
      if (there == null || found.start() < from || !isBefore(there)) continue;
      String written = words.substring(found.start(), found.end());
      Matcher number = NUMBER.matcher(written);
      if (!number.find()) continue;
      String figure = figure(now.in(found.unit()));
      out.append(words, from, found.start());
      out.append('\u0001').append(written, 0, number.start()).append(figure);
      out.append(written.substring(number.end())).append('\u0002');
      from = found.end();
    }
    out.append(words.substring(from));
    return unmarked(out.toString());
  }

  private boolean isBefore(Quantity there) {
    if (!sameKind(there.unit(), before.unit())) return false;
    double is = there.in(before.unit());
    return Math.abs(is - before.number()) <= ROUNDED * Math.abs(before.number());
  }

  private static String figure(double number) {
    return Quantity.figure(
        new java.math.BigDecimal(number).round(new java.math.MathContext(3)).doubleValue());
  }

  /** "400 psi (2.76 MPa) or more" becomes "more than 450 psi (3.1 MPa)". */
  private String unmarked(String marked) {
    String joined = marked.replace("\u0002 (\u0001", " (").replace("\u0002)", ")\u0002");
    String said = above ? OR_MORE.matcher(joined).replaceAll("more than $1") : joined;
    return said.replace("\u0001", "").replace("\u0002", "");
  }
}
