package clearbed.read.word;

import java.util.Map;

/** Characters that Word takes from the symbol fonts, whose codes mean nothing elsewhere. */
final class WordSymbols {
  private static final Map<Integer, String> SYMBOL =
      Map.ofEntries(
          Map.entry(0x6D, "\u00B5"),
          Map.entry(0x44, "\u0394"),
          Map.entry(0x61, "\u03B1"),
          Map.entry(0xA2, "\u2032"),
          Map.entry(0xA3, "\u2264"),
          Map.entry(0xB0, "\u00B0"),
          Map.entry(0xB1, "\u00B1"),
          Map.entry(0xB2, "\u2033"),
          Map.entry(0xB3, "\u2265"),
          Map.entry(0xB4, "\u00D7"),
          Map.entry(0xB7, "\u2022"),
          Map.entry(0xBB, "\u2248"));
  private static final Map<Integer, String> WINGDINGS =
      Map.of(
          0x6F, "\u2610", 0xA8, "\u2610", 0xFD, "\u2612", 0xFE, "\u2611", 0xFC, "\u2713", 0xA7,
          "\u2022");

  private WordSymbols() {}

  /**
   * @param code in hexadecimal, with or without the private-use offset F000
   */
  static String of(String font, String code) {
    int point;
    try {
      point = Integer.parseInt(String.valueOf(code), 16);
    } catch (NumberFormatException e) {
      return "";
    }
    int low = point & 0xFF;
    if ("Symbol".equalsIgnoreCase(font)) return SYMBOL.getOrDefault(low, "\uFFFD");
    if (font != null && font.startsWith("Wingdings")) return WINGDINGS.getOrDefault(low, "\u2022");
    return point >= 0xE000 && point < 0xF900 ? "\uFFFD" : String.valueOf((char) point);
  }
}
