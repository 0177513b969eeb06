package clearbed.check.judge;

import clearbed.model.document.Origin;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** Which places were seen before, whatever their words; cells by the million take a bit each. */
final class SeenPlaces {
  private final Set<Origin> places = new HashSet<>();
  private final Map<Origin, BitSet> rows = new HashMap<>();

  /** True for a place the first time. */
  boolean isNew(Origin origin) {
    String cell = origin.cell();
    int digits = cell == null ? -1 : firstDigit(cell);
    if (digits < 0) return places.add(at(origin, cell));
    int row = Integer.parseInt(cell, digits, cell.length(), 10);
    BitSet seen =
        rows.computeIfAbsent(at(origin, cell.substring(0, digits)), column -> new BitSet());
    if (seen.get(row)) return false;
    seen.set(row);
    return true;
  }

  private static Origin at(Origin o, String cell) {
    return new Origin(o.document(), o.sheet(), cell, o.page(), o.paragraph(), o.heading(), null);
  }

  /** Where the row of an address such as {@code B7} begins, or -1 when it is none. */
  private static int firstDigit(String cell) {
    int at = 0;
    while (at < cell.length() && cell.charAt(at) >= 'A' && cell.charAt(at) <= 'Z') at++;
    int digits = cell.length() - at;
    if (at == 0 || digits == 0 || digits > 7 || cell.charAt(at) == '0') return -1;
    for (int i = at; i < cell.length(); i++) {
      if (cell.charAt(i) < '0' || cell.charAt(i) > '9') return -1;
    }
    return at;
  }
}
