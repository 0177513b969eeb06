package clearbed.read.layout;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Joins lines of running text: a word split at the line's end is made whole, a compound keeps its
 * hyphen.
 */
public final class Hyphens {
  private static final Pattern SPLIT = Pattern.compile("(\\p{L}+)[-\u00AD]$");
  private static final Pattern REST = Pattern.compile("^(\\p{Ll}+|\\p{Lu}{2,}(?!\\p{L}))");

  /** Second halves of the compounds common in specifications. Common practice, no source. */
  private static final Set<String> SECOND_HALVES =
      Set.of(
          "adhesive",
          "and",
          "backed",
          "based",
          "bed",
          "buttered",
          "cementitious",
          "coat",
          "coated",
          "conditioned",
          "cured",
          "duty",
          "edge",
          "edged",
          "faced",
          "field",
          "filled",
          "film",
          "fired",
          "free",
          "fused",
          "glass",
          "grade",
          "joint",
          "length",
          "material",
          "mesh",
          "mix",
          "mixed",
          "modified",
          "mounted",
          "of",
          "on",
          "or",
          "part",
          "piece",
          "place",
          "proof",
          "proofing",
          "rated",
          "resistant",
          "sensitive",
          "set",
          "shrink",
          "site",
          "size",
          "sized",
          "slip",
          "soluble",
          "temperature",
          "term",
          "thaw",
          "through",
          "tight",
          "to",
          "type",
          "up",
          "use",
          "wide",
          "yield");

  /** First halves that stand before a hyphen. */
  private static final Set<String> FIRST_HALVES =
      Set.of("all", "back", "cross", "ex", "non", "self", "thick", "thin", "two", "three", "wet");

  private Hyphens() {}

  /** The lines as one, with a blank between unless a word runs on. */
  public static void append(StringBuilder text, String line) {
    if (text.length() == 0) {
      text.append(line);
      return;
    }
    int from = Math.max(0, text.length() - 40);
    Matcher split = SPLIT.matcher(text.substring(from));
    Matcher rest = REST.matcher(line);
    if (split.find() && rest.find() && isOneCase(split.group(1), rest.group(1))) {
      boolean soft = text.charAt(text.length() - 1) == '\u00AD';
      if (soft || !isCompound(split.group(1), rest.group(1))) text.setLength(text.length() - 1);
    } else if (!endsInHyphenOfWord(text)) {
      text.append(' ');
    }
    text.append(line);
  }

  private static boolean endsInHyphenOfWord(StringBuilder text) {
    int n = text.length();
    return n > 1 && text.charAt(n - 1) == '-' && Character.isLetterOrDigit(text.charAt(n - 2));
  }

  /** A word in capitals goes on in capitals. */
  private static boolean isOneCase(String first, String rest) {
    return Character.isLowerCase(rest.charAt(0))
        || first.length() > 1 && first.equals(first.toUpperCase(Locale.ROOT));
  }

  private static boolean isCompound(String first, String second) {
    return FIRST_HALVES.contains(first.toLowerCase(Locale.ROOT))
        || SECOND_HALVES.contains(second.toLowerCase(Locale.ROOT))
        || first.length() == 1;
  }
}
