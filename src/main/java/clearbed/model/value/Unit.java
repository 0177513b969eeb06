package clearbed.model.value;

/**
 * Units that documents are written in. Factors to SI are exact where NIST SP 811 (2008), appendix
 * B, gives them so. Our own, as a figure keeps the unit it was written in and a temperature is no
 * temperature range; tests hold it against indriya, an implementation of the units API.
 */
public enum Unit {
  METRE(Dimension.LENGTH, "m", 1),
  MILLIMETRE(Dimension.LENGTH, "mm", 1e-3),
  CENTIMETRE(Dimension.LENGTH, "cm", 1e-2),
  INCH(Dimension.LENGTH, "in", 0.0254),
  FOOT(Dimension.LENGTH, "ft", 0.3048),
  YARD(Dimension.LENGTH, "yd", 0.9144),
  MIL(Dimension.LENGTH, "mil", 2.54e-5),
  SQUARE_METRE(Dimension.AREA, "m²", 1),
  SQUARE_FOOT(Dimension.AREA, "sq ft", 0.3048 * 0.3048),
  SQUARE_INCH(Dimension.AREA, "sq in", 0.0254 * 0.0254),
  CUBIC_METRE(Dimension.VOLUME, "m³", 1),
  LITRE(Dimension.VOLUME, "L", 1e-3),
  MILLILITRE(Dimension.VOLUME, "mL", 1e-6),
  /** US gallon of 231 cubic inches. */
  GALLON(Dimension.VOLUME, "gal", 231 * 0.0254 * 0.0254 * 0.0254),
  CUBIC_FOOT(Dimension.VOLUME, "cu ft", 0.3048 * 0.3048 * 0.3048),
  PASCAL(Dimension.PRESSURE, "Pa", 1),
  KILOPASCAL(Dimension.PRESSURE, "kPa", 1e3),
  MEGAPASCAL(Dimension.PRESSURE, "MPa", 1e6),
  NEWTON_PER_SQUARE_MILLIMETRE(Dimension.PRESSURE, "N/mm²", 1e6),
  /** One pound-force (4.448 221 615 260 5 N, exact) on a square inch. */
  PSI(Dimension.PRESSURE, "psi", 4.4482216152605 / (0.0254 * 0.0254)),
  KELVIN(Dimension.TEMPERATURE, "K", 1),
  CELSIUS(Dimension.TEMPERATURE, "°C", 1, 273.15),
  FAHRENHEIT(Dimension.TEMPERATURE, "°F", 5.0 / 9, 459.67),
  KELVIN_DIFFERENCE(Dimension.TEMPERATURE_DIFFERENCE, "K", 1),
  CELSIUS_DIFFERENCE(Dimension.TEMPERATURE_DIFFERENCE, "°C", 1),
  FAHRENHEIT_DIFFERENCE(Dimension.TEMPERATURE_DIFFERENCE, "°F", 5.0 / 9),
  PER_KELVIN(Dimension.EXPANSION, "/K", 1),
  PER_FAHRENHEIT(Dimension.EXPANSION, "/°F", 9.0 / 5),
  /** A plain number: a coefficient of friction, the n of L/n. */
  ONE(Dimension.RATIO, "", 1),
  PERCENT(Dimension.RATIO, "%", 1e-2),
  /** US perm: one grain an hour, a square foot and an inch of mercury at 0 °C (3386.389 Pa). */
  PERM(Dimension.PERMEANCE, "perm", 0.45359237 / 7000 / (3600 * 0.3048 * 0.3048 * 3386.389)),
  KILOGRAM(Dimension.MASS, "kg", 1),
  POUND(Dimension.MASS, "lb", 0.45359237),
  HOUR(Dimension.TIME, "h", 3600),
  DAY(Dimension.TIME, "d", 86400);

  private final Dimension dimension;
  private final String symbol;
  private final double factor;
  private final double offset;

  Unit(Dimension dimension, String symbol, double factor) {
    this(dimension, symbol, factor, 0);
  }

  /** SI value = (number + offset) * factor. */
  Unit(Dimension dimension, String symbol, double factor, double offset) {
    this.dimension = dimension;
    this.symbol = symbol;
    this.factor = factor;
    this.offset = offset;
  }

  public Dimension dimension() {
    return dimension;
  }

  public String symbol() {
    return symbol;
  }

  double toSi(double number) {
    return (number + offset) * factor;
  }

  double fromSi(double si) {
    return si / factor - offset;
  }
}
