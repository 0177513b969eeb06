package clearbed.recognise.section.outline;

import clearbed.recognise.text.PlainText;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers of sections, as titles, margins and names of files have them. */
public final class SectionNumbers {
  private static final Pattern SECTION =
      Pattern.compile(
          "^(?:SECTION|Section|DOCUMENT)\\s+(\\d{2}[ .-]?\\d{2}[ .-]?\\d{2}(?:\\.\\d{2})?|\\d{5}|[A-Z]\\d{2})\\b\\s*[-:.]*\\s*(.*)$");
  private static final Pattern BARE_SECTION =
      Pattern.compile(
          "^(\\d{2} \\d{2} \\d{2}(?:\\.\\d{2})?|[A-Z]\\d{2})\\s*[-:.]?\\s+([A-Z][A-Za-z ,/&-]{3,60})$");
  private static final Pattern FILE_NUMBER =
      Pattern.compile("(?:^|[^0-9])(\\d{2})[ _.-]?(\\d{2})[ _.-]?(\\d{2})(?:\\.\\d{2})?(?![0-9])");

  private static final Pattern NUMBER_IN_MARGIN =
      Pattern.compile("\\b(?:SECTION\\s+)?(\\d{2} \\d{2} \\d{2})\\b");
  private static final Pattern BLANKS = Pattern.compile("\\s+");

  /** What opens a section; the title may stand on the next line. */
  public record Opening(String number, String title) {}

  private SectionNumbers() {}

  /** "SECTION 09 30 00 - TILING". */
  public static Optional<Opening> called(String text) {
    return opening(SECTION.matcher(BLANKS.matcher(text).replaceAll(" ")));
  }

  /** "09 30 00 Tiling". */
  public static Optional<Opening> bare(String text) {
    return opening(BARE_SECTION.matcher(text));
  }

  private static Optional<Opening> opening(Matcher m) {
    return m.matches() ? Optional.of(new Opening(m.group(1), m.group(2))) : Optional.empty();
  }

  /** The number that a running header repeats, or empty. */
  static String inMargin(String text) {
    Matcher m = NUMBER_IN_MARGIN.matcher(PlainText.of(text));
    return m.find() ? canonical(m.group(1)) : "";
  }

  /** The number in the name of a file, or empty. */
  static String ofFile(String name) {
    Matcher m = FILE_NUMBER.matcher(name);
    return m.find() ? m.group(1) + " " + m.group(2) + " " + m.group(3) : "";
  }

  /** Numbers of older editions and other spellings as this edition writes them. */
  static String canonical(String number) {
    String digits = number.replaceAll("[ .-]", "");
    if (digits.matches("\\d{6}(?:\\d{2})?"))
      return digits.substring(0, 2) + " " + digits.substring(2, 4) + " " + digits.substring(4, 6);
    // Five-digit numbers of the older edition: 09310 and kin are tile, 07920 sealants.
    if (digits.startsWith("093")) return "09 30 00";
    return digits.equals("07920") || digits.equals("07900") ? "07 92 00" : number;
  }
}
