package clearbed.resolve.product;

import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import clearbed.recognise.schedule.row.RowReader;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.resolve.entry.Draft;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Products that one schedule describes and another calls by their marks: {@code T-1 | Product 4 |
 * Lobby} beside {@code Product 4 | fused | translucent | mesh-backed}. A product is no tile of its
 * own: what its row says is said of the tiles that call for it.
 */
public final class CalledProducts {
  /** Fewer of the same letters might be tiles that another tile is to match. */
  private static final int FEWEST = 2;

  private static final String TILE = "tile.";
  private static final String LOCATION = "location.";
  private static final String ROOM = "location.room";

  /** For the letters of codes that are figures alone. */
  private static final String FIGURES = "#";

  /** Keys of the tiles that call for a product, by its key. */
  private final Map<String, Set<String>> users = new TreeMap<>();

  /** Keys of all such tiles. */
  private final Set<String> told = new HashSet<>();

  /**
   * @param drafts what schedules have; products are taken out of them
   */
  public CalledProducts(Map<String, Draft> drafts) {
    Set<String> described = described(drafts);
    Map<String, Set<String>> called = new TreeMap<>();
    Map<String, Integer> times = new HashMap<>();
    for (Draft draft : drafts.values()) {
      boolean letters = !described.isEmpty() && !described.contains(family(draft.key));
      if (!draft.glass && !(letters && isTile(draft))) continue;
      for (String key : calls(draft)) {
        Draft product = drafts.get(key);
        if (product == null || product == draft) continue;
        boolean known = letters && described.contains(family(key));
        boolean listed = isListed(product, draft);
        if (!known && !listed) continue;
        Set<String> tiles = called.computeIfAbsent(key, any -> new TreeSet<>());
        if (tiles.isEmpty() && known) times.merge(family(key), 1, Integer::sum);
        if (tiles.isEmpty() && listed) times.merge(list(product), 1, Integer::sum);
        tiles.add(draft.key);
      }
    }
    times.values().removeIf(n -> n < FEWEST);
    if (times.isEmpty()) return;
    Map<String, Draft> products = new HashMap<>();
    // Of products that no tile calls for the rows are products all the same.
    for (Draft draft : List.copyOf(drafts.values()))
      if (times.containsKey(family(draft.key)) || times.containsKey(list(draft)))
        products.put(draft.key, drafts.remove(draft.key));
    called.forEach(
        (key, tiles) -> {
          Draft product = products.get(key);
          if (product == null) return;
          users.put(key, tiles);
          told.addAll(tiles);
          tiles.forEach(tile -> join(drafts.get(tile), product));
        });
  }

  /** "OLU-20 | fused | 20 x 20": a row of another table that describes a tile and places none. */
  private static boolean isListed(Draft product, Draft tile) {
    String list = list(product);
    return !list.isEmpty()
        && tile.rows.stream().noneMatch(row -> list(row).equals(list))
        && states(product, TILE)
        && !states(product, LOCATION);
  }

  /** The one table that all rows of it stand in; empty where there is none. */
  private static String list(Draft draft) {
    Set<String> tables = new HashSet<>();
    for (ScheduleRow row : draft.rows) tables.add(list(row));
    return tables.size() == 1 ? tables.iterator().next() : "";
  }

  private static String list(ScheduleRow row) {
    Origin at = row.origin();
    return String.join(
        "|", at.document(), String.valueOf(at.sheet()), String.valueOf(at.paragraph()));
  }

  /** The letters of glass whose rows all describe it and nowhere say where it is. */
  private static Set<String> described(Map<String, Draft> drafts) {
    Set<String> out = new HashSet<>();
    Set<String> placed = new HashSet<>();
    Set<String> all = new HashSet<>();
    for (Draft draft : drafts.values()) {
      String family = family(draft.key);
      all.add(family);
      if (!draft.glass) continue;
      if (states(draft, TILE) && !states(draft, LOCATION)) out.add(family);
      else placed.add(family);
    }
    out.removeAll(placed);
    out.remove("");
    return all.size() < FEWEST ? Set.of() : out;
  }

  /** "K2 | Cement adhesive, C2 | GM-4" is an adhesive for a tile, and calls for nothing. */
  private static boolean isTile(Draft draft) {
    if (draft.glass || states(draft, TILE) || states(draft, ROOM)) return true;
    return states(draft, LOCATION) && !states(draft, "mortar.") && !states(draft, "grout.");
  }

  private static boolean states(Draft draft, String what) {
    return draft.rows.stream()
        .flatMap(row -> row.statements().stream())
        .anyMatch(s -> s.attribute().startsWith(what));
  }

  /** The marks that stand alone in cells of its rows, by their keys. */
  private static Set<String> calls(Draft draft) {
    Set<String> out = new TreeSet<>();
    for (ScheduleRow row : draft.rows) {
      for (Statement s : row.statements()) {
        if (!s.attribute().equals(RowReader.MARK) || !(s.content() instanceof Content.Words mark))
          continue;
        String key = Tags.key(mark.text());
        if (Tags.key(s.asWritten()).equals(key)) out.add(key);
      }
    }
    return out;
  }

  /** The letters of a mark, or the word of {@code Product 4}. */
  private static String family(String key) {
    int blank = key.lastIndexOf(' ');
    if (blank > 0) return key.substring(0, blank);
    return key.chars().allMatch(Character::isDigit) ? FIGURES : Tags.prefix(key);
  }

  private static void join(Draft tile, Draft product) {
    for (ScheduleRow row : product.rows) {
      tile.rows.add(row);
      tile.glass |= row.glass();
      tile.places.add(row.origin());
    }
  }

  /** True of a row whose product says what it is: "T-01 | P-1" beside "P-1 | Porcelain". */
  public boolean decides(ScheduleRow row) {
    return told.contains(Tags.key(row.tag()));
  }

  /** A statement on a product, said of the tiles that call for it. */
  public Statement meant(Statement s) {
    Limits limits = s.limits();
    if (users.isEmpty() || limits.tags().isEmpty()) return s;
    Set<String> tags = new TreeSet<>();
    List<String> products = new ArrayList<>();
    for (String tag : limits.tags()) {
      Set<String> tiles = users.get(Tags.key(tag));
      if (tiles == null) tags.add(tag);
      else tags.addAll(tiles);
      if (tiles != null) products.add(tag);
    }
    return products.isEmpty() ? s : s.withLimits(limits.withTags(tags));
  }
}
