package clearbed.recognise.schedule.column;

import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.HeadingEvidence;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;

/** What the columns of a table say of each other, and what the heading over it says of all. */
final class ColumnNeighbours {
  private static final String COLOUR = ".colour";

  /** What may be meant by a colour that stands before it. */
  private static final Set<String> COLOURED = Set.of("mortar", "grout");

  private static final double NEIGHBOUR = 0.75;

  /** A column takes its sense from the one before it more than from the one behind. */
  private static final double BEHIND = 0.4;

  /** A heading that names a part of the work and no more. */
  private static final double SILENT = 0.36;

  /** Sealants are of movement joints. */
  private static final Set<String> KIN = Set.of("sealant", "movement");

  private static final String MOVEMENT_WIDTH = "movement.width";
  private static final String GROUT_WIDTH = "grout.width";
  private static final Pattern OF_EITHER =
      Pattern.compile("grout|\\bwidth\\b.{0,12}\\bdepth\\b", Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;
  private final HeardHeadings headings;
  private final MarkRights marks;

  ColumnNeighbours(Vocabulary vocabulary, HeardHeadings headings) {
    this.vocabulary = vocabulary;
    this.headings = headings;
    this.marks = new MarkRights(vocabulary, headings);
  }

  /**
   * Takes from the columns of a table what others have more right to.
   *
   * @param family part of the work that the heading over the table speaks of, or empty
   */
  void among(
      List<ColumnWords> words, Map<Integer, Map<String, ColumnScore>> scores, String family) {
    boolean tile = saysWhatTileIs(scores);
    // "Spacing | Joint width" below "GROUTING AND MOVEMENT JOINTS": what is grouted has no spacing.
    boolean spaced = !tile && spaced(scores);
    boolean told = WorkFamilies.PARTS.contains(family) || tile;
    String of = spaced ? "movement" : told ? family : ofJoints(words);
    boolean ofOne = isOfOne(words, of);
    for (ColumnWords w : words) {
      Map<String, ColumnScore> own = scores.get(w.index());
      if (own != null && ofOne && families(w.text()).isEmpty())
        own.replaceAll((meaning, s) -> under(of, meaning, s));
      if (own != null && of.equals("movement")) sidesOfFields(own);
    }
    if (spaced) ofMovement(words, scores);
    marks.among(words, scores);
    strengths(scores, words);
  }

  /** "Length of field | Width of joint | Sealant": no joint that is grouted has a field. */
  private static void ofMovement(
      List<ColumnWords> words, Map<Integer, Map<String, ColumnScore>> scores) {
    boolean told =
        scores.values().stream()
            .map(own -> own.get(MOVEMENT_WIDTH))
            .anyMatch(s -> s != null && s.heading() >= ColumnScores.EXACT);
    // Beside a grout, or a width of movement joints with their depth, it is grouted after all.
    boolean grouted = words.stream().anyMatch(w -> OF_EITHER.matcher(w.text()).find());
    if (told || grouted) return;
    for (Map<String, ColumnScore> own : scores.values()) {
      ColumnScore grout = own.remove(GROUT_WIDTH);
      if (grout == null) continue;
      own.merge(MOVEMENT_WIDTH, grout, (one, other) -> one.sum() < other.sum() ? other : one);
    }
  }

  /** "Longest side" in a table of movement joints is that of a field. */
  private static void sidesOfFields(Map<String, ColumnScore> own) {
    ColumnScore run = own.get("location.run");
    ColumnScore spacing = own.get("movement.spacing");
    if (run == null || spacing == null || run.heading() >= ColumnScores.EXACT) return;
    if (spacing.cells() >= ColumnScores.HALF) own.remove("location.run");
  }

  /**
   * Beside a mortar of ANSI A118 a strength is that in shear; beside a class of EN 12004 in
   * tension.
   */
  private void strengths(Map<Integer, Map<String, ColumnScore>> scores, List<ColumnWords> words) {
    boolean iso = anyFits(scores, "mortar.isoClass");
    boolean ansi = anyFits(scores, "mortar.standard");
    if (iso == ansi) return;
    String meant = iso ? "mortar.tensile" : "mortar.bond";
    String other = iso ? "mortar.bond" : "mortar.tensile";
    for (Map<String, ColumnScore> own : scores.values()) {
      ColumnScore s = own.get(meant);
      ColumnScore o = own.get(other);
      boolean told = s == null || o == null || Math.max(s.heading(), o.heading()) > SILENT;
      if (!told && s.unit() > 0)
        own.put(meant, s.beside(iso ? "a class of EN 12004" : "a mortar of ANSI A118", NEIGHBOUR));
    }
  }

  private static boolean anyFits(Map<Integer, Map<String, ColumnScore>> scores, String meaning) {
    return scores.values().stream()
        .anyMatch(own -> own.containsKey(meaning) && own.get(meaning).cells() >= ColumnScores.HALF);
  }

  /** In a table of movement joints the width of a joint is not that of a grout joint. */
  private ColumnScore under(String family, String meaning, ColumnScore s) {
    if (isOf(meaning, family)) return s.beside(family, NEIGHBOUR);
    boolean other =
        WorkFamilies.PARTS.stream()
            .filter(p -> !KIN.contains(family) || !KIN.contains(p))
            .anyMatch(p -> isOf(meaning, p));
    return other ? new ColumnScore(s.heading() / 2, s.cells(), s.unit(), s.beside(), s.why()) : s;
  }

  /** "Colour" beside the mortar is that of the mortar. */
  void beside(
      List<ColumnWords> words,
      Map<Integer, Assignment.Choice> first,
      Map<Integer, Map<String, ColumnScore>> scores) {
    Map<String, Map<String, Integer>> groups = ofGroups(words, first);
    for (int i = 0; i < words.size(); i++) {
      ColumnWords w = words.get(i);
      Map<String, ColumnScore> own = scores.get(w.index());
      if (own == null || !families(w.text()).isEmpty() || isPlain(own)) continue;
      if (isColourOfTile(i, words, first)) own.keySet().removeIf(m -> m.endsWith(COLOUR));
      String group = ofGroup(groups.get(w.top()), family(first.get(w.index())));
      String before =
          !group.isEmpty() ? group : i == 0 ? "" : family(first.get(words.get(i - 1).index()));
      String behind = i + 1 == words.size() ? "" : family(first.get(words.get(i + 1).index()));
      String family = before.isEmpty() ? behind : before;
      double by = before.isEmpty() ? BEHIND : NEIGHBOUR;
      String had = meaning(i, words, first);
      if (!family.isEmpty())
        own.replaceAll(
            (meaning, s) ->
                isOf(meaning, family) && !meaning.equals(had) ? s.beside(family, by) : s);
    }
  }

  /** "Thickness | Colour | Clarity": the colour is that of the tile, which is asked of nobody. */
  private boolean isColourOfTile(
      int at, List<ColumnWords> words, Map<Integer, Assignment.Choice> first) {
    ColumnWords w = words.get(at);
    boolean looks =
        w.top().isEmpty() && vocabulary.list("schedule.looks").matches(w.text().strip());
    if (!looks || at == 0) return false;
    Assignment.Choice before = first.get(words.get(at - 1).index());
    String meaning = before == null ? "" : before.meaning();
    String behind = at + 1 == words.size() ? "" : family(first.get(words.get(at + 1).index()));
    boolean ofTile = meaning.startsWith("tile.") || meaning.equals(HeadingEvidence.MATERIAL);
    return ofTile && !COLOURED.contains(behind);
  }

  /** A heading that says by itself what it is needs no neighbour. */
  private boolean isPlain(Map<String, ColumnScore> own) {
    return own.entrySet().stream()
        .anyMatch(
            e ->
                e.getValue().heading() >= ColumnScores.EXACT
                    && e.getValue().cells() > ColumnScores.HALF_BORNE_OUT
                    && vocabulary.attribute(e.getKey()).isPresent());
  }

  /** What the column before one holds: the next holds something else. */
  private static String meaning(
      int at, List<ColumnWords> words, Map<Integer, Assignment.Choice> first) {
    Assignment.Choice before = at == 0 ? null : first.get(words.get(at - 1).index());
    return before == null ? "" : before.meaning();
  }

  /** The part of the work that the other columns below the same heading are about, if but one. */
  private static String ofGroup(Map<String, Integer> group, String own) {
    if (group == null) return "";
    String out = "";
    for (Map.Entry<String, Integer> part : group.entrySet()) {
      if (part.getValue() == 1 && part.getKey().equals(own)) continue;
      if (!out.isEmpty()) return "";
      out = part.getKey();
    }
    return out;
  }

  /** By the words over a group of columns: how many of them are about which part of the work. */
  private Map<String, Map<String, Integer>> ofGroups(
      List<ColumnWords> words, Map<Integer, Assignment.Choice> first) {
    Map<String, Map<String, Integer>> out = new HashMap<>();
    for (ColumnWords w : words) {
      String family = family(first.get(w.index()));
      if (!w.top().isEmpty() && !family.isEmpty())
        out.computeIfAbsent(w.top(), any -> new TreeMap<>()).merge(family, 1, Integer::sum);
    }
    return out;
  }

  /** The part of the work that a column is about, where that is not the tile itself. */
  private String family(Assignment.Choice choice) {
    if (choice == null || choice.score() < JointEvidence.ENOUGH) return "";
    return vocabulary
        .attribute(choice.meaning())
        .map(Attribute::family)
        .filter(f -> !f.equals("tile") && !f.equals("location") && !f.equals("process"))
        .orElse("");
  }

  private Set<String> families(String words) {
    return headings.families(words);
  }

  /**
   * A schedule of tiles has columns of its own for them, and grout joints among the rest; beside
   * "Movement joint" a plain "Joint" is one that is grouted.
   */
  private static boolean saysWhatTileIs(Map<Integer, Map<String, ColumnScore>> scores) {
    return scores.values().stream()
        // "Tile" over marks says of no tile what it is.
        .filter(own -> !holdsTags(own))
        .flatMap(own -> own.entrySet().stream())
        .anyMatch(
            e ->
                (e.getKey().startsWith("tile.")
                        || e.getKey().equals(HeadingEvidence.MATERIAL) && e.getValue().cells() >= 0
                        || e.getKey().equals("movement.width"))
                    && e.getValue().heading() >= ColumnScores.EXACT);
  }

  private static boolean holdsTags(Map<String, ColumnScore> own) {
    ColumnScore tag = own.get(HeadingEvidence.TAG);
    return tag != null && tag.cells() >= ColumnScores.HALF;
  }

  private static boolean spaced(Map<Integer, Map<String, ColumnScore>> scores) {
    return scores.values().stream()
        .map(own -> own.get("movement.spacing"))
        .anyMatch(
            s -> s != null && s.heading() >= ColumnScores.HINT && s.cells() >= ColumnScores.FITS);
  }

  /** "Greatest distance | Joint width | Depth of sealant" is of movement joints. */
  private String ofJoints(List<ColumnWords> words) {
    Set<String> parts = new LinkedHashSet<>();
    for (ColumnWords w : words) parts.addAll(families(w.text()));
    parts.retainAll(WorkFamilies.PARTS);
    return !parts.isEmpty() && KIN.containsAll(parts) ? "movement" : "";
  }

  /** True of a table on one part of the work, none of whose headings names another. */
  private boolean isOfOne(List<ColumnWords> words, String family) {
    return WorkFamilies.PARTS.contains(family)
        && words.stream()
            .flatMap(w -> families(w.text()).stream())
            .filter(WorkFamilies.PARTS::contains)
            .allMatch(p -> p.equals(family) || KIN.contains(p) && KIN.contains(family));
  }

  private boolean isOf(String meaning, String family) {
    return headings.isOf(meaning, family);
  }
}
