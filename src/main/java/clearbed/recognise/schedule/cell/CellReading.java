package clearbed.recognise.schedule.cell;

import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What a cell could be the value of, whatever stands over it.
 *
 * @param stated attributes that the standards in it state
 * @param terms attributes whose terms it has, with the share of its words that they make up
 * @param product true when it names a tile or another finish
 * @param place true when it names a place
 * @param condition true when it says how wet, cold or hot a place is
 * @param requires attributes that it says are required
 * @param named attributes whose term it is behind their name, as "50" is Class 50
 * @param bare true for nothing but a number, whose unit stands elsewhere
 * @param says false where it is blank, open, or points elsewhere
 */
public record CellReading(
    String text,
    boolean tag,
    boolean yesNo,
    int words,
    List<Quantities.Found> figures,
    Set<String> stated,
    boolean standard,
    Map<String, Double> terms,
    boolean product,
    boolean place,
    boolean condition,
    Set<String> requires,
    Set<String> named,
    boolean bare,
    boolean sides,
    boolean says) {

  /** A word that is no unit, behind a size. */
  private static final Pattern NAMING = Pattern.compile("[x\u00d7]\\s?\\d.{0,60}?\\p{L}{4,}");

  /** Classes of AS 4586 by the pendulum. */
  private static final Pattern FRACTION =
      Pattern.compile("(?:\\d{1,2}[ -])?\\d{1,2}/(?:2|4|8|16|32|64)");

  private static final Pattern PENDULUM = Pattern.compile("P[0-5](?: .{0,20})?");

  private static final Pattern DEFLECTION =
      Pattern.compile("(?:L|span) ?/ ?\\d{3,4}\\b.{0,30}", Pattern.CASE_INSENSITIVE);

  /** "NT, G" is no place. */
  private static final Pattern CODE = Pattern.compile("[A-Z]{1,2}(?:, ?[A-Z]{1,2})*");

  /** Words where a standard is cited elsewhere. */
  private static final double WORDS_ALONE = -0.35;

  /** "0930.G1": of parts with a letter and a figure, as offices count their materials. */
  private static final Pattern OFFICE_CODE =
      Pattern.compile("(?=.{4,12}$)(?=.*\\p{Lu})(?=.*\\d)" + Tags.CODE);

  /** A share of a cell that says what it is. */
  private static final double WHOLE = 0.5;

  /** Words that may be what the heading says they are. */
  public static final double MAYBE = 0.3;

  /** No tile is longer. */
  private static final Quantity LONGEST_SIDE = Quantity.of(1.8, Unit.METRE);

  /** A class alone, in characters. */
  public static final int LONGEST_CLASS = 6;

  /** Words of a sentence. */
  private static final int SENTENCE = 4;

  /** So many words are no figure with what it is of. */
  private static final int DESCRIPTION = 7;

  /** A size of three sides. */
  public boolean thick() {
    return figures.stream()
        .anyMatch(f -> f.content() instanceof Content.Size size && size.sides().size() > 2);
  }

  boolean sentence() {
    return words >= SENTENCE;
  }

  boolean digits() {
    return digits(text);
  }

  public static boolean digits(String text) {
    for (int i = 0; i < text.length(); i++) if (Character.isDigit(text.charAt(i))) return true;
    return false;
  }

  private boolean mostlyTerm() {
    for (double share : terms.values()) if (share >= WHOLE) return true;
    return false;
  }

  /** True when it is plainly of a kind: a figure, a size, a standard or a tag. */
  private boolean typed() {
    return tag || standard || bare || sides || !figures.isEmpty();
  }

  /**
   * @param unit of the column that the cell is in, or null
   */
  public Measured under(Unit unit) {
    boolean measured = bare && unit != null;
    String figure = measured ? text.replaceAll("[%+]", "").trim() + " " + unit.symbol() : "";
    return new Measured(this, unit, measured ? Quantities.find(figure) : List.of());
  }

  /**
   * A cell in its column.
   *
   * @param unit of the column, or null
   * @param figures that a bare number is with that unit
   */
  public record Measured(CellReading reading, Unit unit, List<Quantities.Found> figures) {
    /** How well it is a value of an attribute: 1 its value, 0 neither, -1 something else. */
    public double fits(Attribute a) {
      return reading.fits(a, this);
    }
  }

  private double fits(Attribute a, Measured in) {
    return switch (a.kind()) {
      case STANDARD -> standard(a);
      case TERM -> term(a);
      case AMOUNT -> amount(a, in);
      case SIZE -> size(in.unit());
      case FLATNESS -> figures.size() == 2 && !sides ? 0.6 : digits() ? 0 : -1;
      case REQUIRED -> yesNo ? 0.6 : required(a, in.unit());
      case WORDS -> a.id().equals("notes") ? notes() : a.id().equals("location.room") ? room() : -1;
    };
  }

  private double standard(Attribute a) {
    boolean byClass = !standard && terms.containsKey("mortar.isoClass");
    if (stated.contains(a.id())) return byClass ? 0.3 : 1;
    if (standard) return stated.isEmpty() ? 0.4 : -1;
    if (typed() || !stated.isEmpty()) return -1;
    if (text.equalsIgnoreCase("none")) return 0;
    return yesNo ? -0.7 : WORDS_ALONE;
  }

  private double term(Attribute a) {
    double share = terms.getOrDefault(a.id(), 0.0);
    boolean isClass = a.id().equals("mortar.isoClass");
    // What a standard or a class implies is not what the column is for.
    if (share > 0 && !isClass && (standard || !stated.isEmpty())) return 0.4;
    if (share > 0 && a.id().equals("location.exposure") && !condition) return digits() ? 0.3 : 0.6;
    // "Glass mosaic for walls" under "Surface" is what a surface is made of.
    if (a.id().equals("location.surface") && product) return -1;
    if (share > 0 && a.id().equals("location.surface") && digits()) return 0.3;
    if (share > 0) return share >= 0.5 || isClass ? 1 : 0.6;
    if (a.id().endsWith(".colour") && !typed() && !yesNo && words > 0 && words < SENTENCE)
      return MAYBE;
    if (standard) return -0.7;
    if (typed()) return -1;
    return yesNo ? -0.7 : mostlyTerm() ? -0.9 : 0;
  }

  private double amount(Attribute a, Measured in) {
    if (a.id().equals("tile.pendulum") && PENDULUM.matcher(text).matches()) return 0.8;
    if (a.id().equals("substrate.deflection") && DEFLECTION.matcher(text).matches()) return 1;
    boolean other = false;
    for (Quantities.Found f : figures) {
      if (f.content() instanceof Content.Amount amount) {
        boolean fits = Quantities.as(amount, a.dimension()).filter(a::accepts).isPresent();
        // "Porcelain tile 300 x 300 mm on mortar bed, joint 4 mm" says more than its figures.
        if (fits) return sides ? 0 : words >= DESCRIPTION ? 0.3 : 1;
        other = true;
      }
      other |= f.content() instanceof Content.Size;
    }
    if (bare) {
      // Fractions down to 64ths are of inches wherever they stand.
      if (in.unit() == null
          && a.dimension() == Dimension.LENGTH
          && FRACTION.matcher(text).matches()) return inches(a) ? 0.8 : -0.5;
      if (in.unit() == null) return a.dimension() != Dimension.RATIO ? 0.1 : plain(a) ? 0.4 : -0.5;
      return in.figures().stream()
              .anyMatch(
                  f ->
                      f.content() instanceof Content.Amount m
                          && Quantities.as(m, a.dimension()).filter(a::accepts).isPresent())
          ? 1
          : -1;
    }
    return other || standard || !stated.isEmpty() || tag || sides || !digits() ? -1 : 0;
  }

  private boolean inches(Attribute a) {
    return Quantities.parse(text.trim() + " in", a.dimension(), DecimalMark.UNKNOWN)
        .filter(a::accepts)
        .isPresent();
  }

  /** A number without a unit that the attribute might have. */
  private boolean plain(Attribute a) {
    if (a.dimension() != Dimension.RATIO || a.plausible() == null) return true;
    return Quantities.parse(
            text.replaceAll("[%+]", "").trim(), Dimension.RATIO, DecimalMark.UNKNOWN)
        .filter(a::accepts)
        .isPresent();
  }

  private double size(Unit unit) {
    if (sides) return 1;
    boolean size = figures.stream().anyMatch(f -> f.content() instanceof Content.Size);
    if (size) return sentence() ? 0.4 : 1;
    if (figures.size() == 1
        && figures.get(0).content() instanceof Content.Amount m
        && Quantities.as(m, Dimension.LENGTH).isPresent())
      return Quantities.as(m, Dimension.LENGTH).get().low().compareTo(LONGEST_SIDE) > 0 ? -1 : 0.3;
    if (bare) return unit == null ? 0 : 0.3;
    return standard || tag || !digits() ? -1 : 0;
  }

  private double required(Attribute a, Unit unit) {
    boolean wait = unit != null && unit.dimension() == Dimension.TIME && a.id().contains(".cure");
    if (wait && bare) return 0.6;
    if (requires.contains(a.id())) return 0.8;
    return typed() ? -1 : 0;
  }

  private double notes() {
    boolean closed = words >= SENTENCE - 1 && text.endsWith(".");
    return closed || words >= SENTENCE + 2 ? 1 : sentence() ? 0.6 : 0;
  }

  private double room() {
    if (standard || sides || !figures.isEmpty()) return -1;
    if (terms.getOrDefault("movement.places", 0.0) >= 0.5 || CODE.matcher(text).matches())
      return -0.5;
    boolean named = place || terms.containsKey("location.exposure");
    if (named) return condition ? 0.2 : digits() ? 1 : 0.8;
    return product ? -0.5 : bare ? 0 : 0.3;
  }

  public double asTag() {
    if (tag) return 1;
    if (standard || sides || words >= SENTENCE) return -1;
    if (words == 1 && text.length() == 1) return 0.3;
    if (bare) return text.contains(".") ? -0.5 : 0.3;
    if (figures.isEmpty() && OFFICE_CODE.matcher(text).matches()) return 0.6;
    return words <= 1 && digits() && figures.isEmpty() ? 0.3 : -0.3;
  }

  public double asMaterial() {
    if (product) return 1;
    boolean figures = typed() && !tag && !standard;
    // "23 x 23 x 4, sea green" may be described as well as measured.
    boolean described = figures ? NAMING.matcher(text).find() : sentence() && !typed();
    return described ? 0.2 : typed() ? -1 : 0;
  }

  public double asSurface() {
    return tag ? 1 : -0.2;
  }
}
