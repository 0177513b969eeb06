package clearbed.calc.joint;

import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A class of movement capability.
 *
 * @param name {@code 25}, {@code 100/50}, {@code 25LM}
 * @param standards the standards that know the class: ASTM C920, ISO 11600
 * @param extension opening that the sealant bears, percent of the joint width
 * @param compression closing that it bears, percent of the joint width
 */
public record SealantClass(
    String name, List<String> standards, double extension, double compression) {

  private static final String C920 = "ASTM C920";
  private static final String ISO = "ISO 11600";

  // Of a stated class, the words and the sub-class for modulus or plasticity say nothing of
  // movement.
  private static final Pattern WRITTEN =
      Pattern.compile(
          "(?:(?:(?:ASTM )?C ?920|(?:EN )?ISO 11600)[ ,:-]*)?(?:TYPE [SM][ ,]*)?(?:GRADE (?:NS|P)[ ,]*)?"
              + "(?:CLASS)? ?(?:[FG]-? ?)?\\+?(?:/-)?±? ?"
              + "(100 ?[/-]+ ?50|12 1/2|12-1/2|12[.,]5|7 1/2|7[.,]5|50|35|25|20)"
              + " ?%?(?:/-? ?\\1)?(LM|HM|E|P)?");

  public SealantClass {
    standards = List.copyOf(standards);
  }

  /**
   * The class that the words name: {@code Class 25}, {@code 12-1/2}, {@code +100/-50}, {@code
   * F-25LM}.
   *
   * @return empty when neither ASTM C920 nor ISO 11600 has such a class
   */
  public static Optional<SealantClass> of(String words) {
    String plain = words.strip().toUpperCase(Locale.ROOT).replaceAll("\\s+", " ");
    Matcher m = WRITTEN.matcher(plain.replace('−', '-').replace('–', '-'));
    if (!m.matches()) return Optional.empty();
    String number = m.group(1).replace(" 1/2", ".5").replace("-1/2", ".5").replace(',', '.');
    String suffix = m.group(2) == null ? "" : m.group(2);
    if (number.startsWith("100")) {
      return suffix.isEmpty()
          ? Optional.of(new SealantClass("100/50", List.of(C920), 100, 50))
          : Optional.empty();
    }
    return of(number, suffix);
  }

  private static Optional<SealantClass> of(String number, String suffix) {
    List<String> standards =
        switch (number) {
          case "25" -> suffix.isEmpty() ? List.of(C920, ISO) : modulus(suffix);
          case "12.5" -> suffix.isEmpty() ? List.of(C920, ISO) : plasticity(suffix, "EP");
          case "20" -> suffix.isEmpty() ? List.of(ISO) : modulus(suffix);
          case "7.5" -> suffix.isEmpty() ? List.of(ISO) : plasticity(suffix, "P");
          default -> suffix.isEmpty() ? List.of(C920) : List.of();
        };
    double capability = Double.parseDouble(number);
    return standards.isEmpty()
        ? Optional.empty()
        : Optional.of(new SealantClass(number + suffix, standards, capability, capability));
  }

  private static List<String> modulus(String suffix) {
    return suffix.endsWith("M") ? List.of(ISO) : List.of();
  }

  private static List<String> plasticity(String suffix, String known) {
    return known.contains(suffix) ? List.of(ISO) : List.of();
  }

  /**
   * The movement to reckon with, percent of the joint width: the lesser of opening and closing, as
   * the temperature on the day of sealing is not known.
   */
  public Quantity capability() {
    return Quantity.of(Math.min(extension, compression), Unit.PERCENT);
  }

  /** What the class bears, in words. */
  public String words() {
    String bears =
        extension == compression
            ? "±" + Quantity.figure(extension)
            : "+" + Quantity.figure(extension) + "/-" + Quantity.figure(compression);
    return "Class " + name + " (" + bears + " % of the joint width)";
  }
}
