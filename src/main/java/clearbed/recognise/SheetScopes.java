package clearbed.recognise;

import clearbed.model.document.Paragraph;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Sheets of rooms or products that follow each other in one document under titles of one form
 * ({@code Room data sheet 0.12}): what a sheet says without a mark is said of the glass tiles that
 * its own table has.
 */
final class SheetScopes {
  /** A title is no longer, in characters. */
  private static final int TITLE = 60;

  /** So many sheets with tiles of their own make a series. */
  private static final int FEWEST = 2;

  /** Keys of the glass tiles of the table that comes behind so many paragraphs. */
  private final TreeMap<Integer, Set<String>> tables = new TreeMap<>();

  /**
   * @param at paragraphs before the table
   */
  void table(int at, Set<String> glass) {
    if (!glass.isEmpty()) tables.computeIfAbsent(at, any -> new TreeSet<>()).addAll(glass);
  }

  /** For each paragraph the tiles of the sheet that it stands on; empty for those on none. */
  List<Set<String>> of(List<Paragraph> running) {
    List<Set<String>> out = new ArrayList<>(Collections.nCopies(running.size(), Set.of()));
    if (tables.size() < FEWEST) return out;
    Map<String, List<Integer>> titles = new HashMap<>();
    for (int i = 0; i < running.size(); i++) {
      String text = running.get(i).text().strip();
      boolean may = running.get(i).origin().cell() == null && !text.isEmpty();
      if (may && text.length() <= TITLE && !text.endsWith("."))
        titles.computeIfAbsent(form(text), any -> new ArrayList<>()).add(i);
    }
    // "A. Finishes" comes again on every sheet, too, but behind the title of the sheet.
    List<Integer> starts =
        titles.values().stream()
            .filter(all -> all.size() >= FEWEST && parts(all))
            .min(Comparator.comparing(all -> all.get(0)))
            .orElse(List.of());
    for (int k = 0; k < starts.size(); k++) {
      int to = k + 1 < starts.size() ? starts.get(k + 1) : running.size();
      Set<String> glass = within(starts.get(k), to);
      for (int i = starts.get(k); i < to; i++) out.set(i, glass);
    }
    return out;
  }

  /** "Room data sheet #": figures and what follows them are what differs. */
  private static String form(String text) {
    return text.replaceFirst("\\S*\\d.*$", "#").strip();
  }

  /** True where titles part the tables, and no two sheets have the same tiles. */
  private boolean parts(List<Integer> starts) {
    if (!tables.isEmpty() && tables.firstKey() < starts.get(0)) return false;
    Set<Set<String>> seen = new HashSet<>();
    int with = 0;
    for (int k = 0; k < starts.size(); k++) {
      int to = k + 1 < starts.size() ? starts.get(k + 1) : Integer.MAX_VALUE;
      Set<String> glass = within(starts.get(k), to);
      if (glass.isEmpty()) continue;
      if (!seen.add(glass)) return false;
      with++;
    }
    return with >= FEWEST;
  }

  private Set<String> within(int from, int to) {
    Set<String> out = new TreeSet<>();
    tables.subMap(from, false, to, true).values().forEach(out::addAll);
    return out;
  }
}
