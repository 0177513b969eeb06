package clearbed.base.config;

import java.util.Collection;
import java.util.Locale;

/** What somebody may have meant by a word that is not known. */
public final class Spelling {
  private static final int LONGEST = 60;

  private Spelling() {}

  /** The known word that is nearest, or all of them where none is near. */
  public static String hint(String word, Collection<String> known) {
    String nearest = nearest(word, known);
    if (!nearest.isEmpty()) return "; did you mean '" + nearest + "'?";
    return known.isEmpty() ? "" : "; known are " + String.join(", ", known);
  }

  /** Empty when none is near: about a third of the letters may be wrong. */
  public static String nearest(String word, Collection<String> known) {
    String best = "";
    int least = Math.max(1, word.length() / 3);
    for (String other : known) {
      if (Math.max(word.length(), other.length()) > LONGEST) continue;
      int distance = distance(word.toLowerCase(Locale.ROOT), other.toLowerCase(Locale.ROOT));
      if (distance < least || distance == least && best.isEmpty()) {
        least = distance;
        best = other;
      }
    }
    return best;
  }

  /** Letters put in, left out, changed, or swapped with the next (optimal string alignment). */
  private static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
      }
    }
    return d[a.length()][b.length()];
  }
}
