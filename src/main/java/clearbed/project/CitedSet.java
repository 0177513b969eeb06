package clearbed.project;

import clearbed.recognise.Facts;
import clearbed.recognise.statement.code.Citation;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The rule set that documents call for by what they cite, where the command line names none.
 *
 * @param why in words; empty where there was nothing to choose
 */
public record CitedSet(String name, String why) {
  public static final String NORTH_AMERICA = "north-america";
  static final String ISO_EN = "iso-en";

  /** Standards of tile work that are needed before they tell anything. */
  private static final int FEW = 3;

  /** So many more than of the other kind: a maker's data sheet cites a few of both. */
  private static final int TIMES = 4;

  private static final Pattern AMERICAN = Pattern.compile("(?:ANSI|ASTM|TCNA|FS) .*");
  private static final Pattern INTERNATIONAL =
      Pattern.compile("(?:ISO|EN|BS|DIN|AS|NZS|NF|DTU|UNI|SIA|SANS) .*");

  /** What they call for; the North American set where they cite too little to tell. */
  public static CitedSet of(List<Facts> facts) {
    Set<String> cited =
        facts.stream()
            .flatMap(f -> f.citations().stream())
            .map(Citation::standard)
            .map(standard -> standard.designation())
            .collect(Collectors.toSet());
    long american = cited.stream().filter(AMERICAN.asMatchPredicate()).count();
    long international = cited.stream().filter(INTERNATIONAL.asMatchPredicate()).count();
    if (international < FEW || international < TIMES * american)
      return new CitedSet(NORTH_AMERICA, "");
    String others = american == 0 ? "no American one" : american + " American";
    return new CitedSet(
        ISO_EN,
        "chosen as the documents cite "
            + international
            + " ISO, EN and national standards and "
            + others
            + "; --set north-america holds them to the other rules");
  }
}
