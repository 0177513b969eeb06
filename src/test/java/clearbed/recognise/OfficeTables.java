package clearbed.recognise;

import clearbed.Checked;
import clearbed.model.document.Document;
import clearbed.model.report.Account;
import clearbed.model.value.Entry;
import clearbed.read.ReadAll;
import clearbed.resolve.Project;
import clearbed.resolve.Resolver;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Holds what tables are taken for against what a careful reader takes them for: beside each
 * document {@code T01.csv} stands {@code T01.json} with its columns and tags.
 */
final class OfficeTables {
  private static final Map<String, String> ROLES =
      Map.of("tag", "tile.tag", "material", "tile.material");

  /**
   * Columns of some tables.
   *
   * @param right given one of the meanings that are right
   * @param leftAlone that are none of ours, and were taken for none
   * @param wrong given another meaning
   * @param named not understood, and said so
   * @param dropped of which nothing is said
   * @param tagsRight of tiles told glass or no glass as they are
   * @param tagsWrong told the wrong way
   * @param tagsMissing of which nothing is known
   */
  record Count(
      int right,
      int leftAlone,
      int wrong,
      int named,
      int dropped,
      int tagsRight,
      int tagsWrong,
      int tagsMissing) {
    static final Count NONE = new Count(0, 0, 0, 0, 0, 0, 0, 0);

    Count plus(Count o) {
      return new Count(
          right + o.right,
          leftAlone + o.leftAlone,
          wrong + o.wrong,
          named + o.named,
          dropped + o.dropped,
          tagsRight + o.tagsRight,
          tagsWrong + o.tagsWrong,
          tagsMissing + o.tagsMissing);
    }

    /** Columns that are an attribute. */
    int meant() {
      return right + wrong + named + dropped;
    }

    double share(int of) {
      return meant() == 0 ? 0 : (double) of / meant();
    }
  }

  /**
   * @param lines one for each column that is not right
   */
  record Result(Map<String, Count> byKind, Count all, List<String> lines) {}

  private OfficeTables() {}

  static Result of(Path folder) throws IOException {
    Map<String, Count> byKind = new TreeMap<>();
    Count all = Count.NONE;
    List<String> lines = new ArrayList<>();
    List<Path> expected;
    try (Stream<Path> files = Files.list(folder)) {
      expected = files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
    }
    Recogniser recogniser = new Recogniser(Checked.vocabulary());
    for (Path file : expected) {
      JsonNode wanted = new ObjectMapper().readTree(file.toFile());
      String name = wanted.get("file").asText();
      Document document = ReadAll.of(folder.resolve(name)).get(0);
      Facts facts = recogniser.recognise(document);
      Count count = columns(wanted, facts, name, lines).plus(tags(wanted, facts, name, lines));
      byKind.merge(name.replaceAll(".*\\.", ""), count, Count::plus);
      all = all.plus(count);
    }
    return new Result(byKind, all, lines);
  }

  private static String plain(String heading) {
    return heading.toLowerCase(Locale.ROOT).replace('²', '2').replaceAll("[^\\p{L}\\p{N}%]+", "");
  }

  private static Count columns(JsonNode wanted, Facts facts, String name, List<String> lines) {
    List<Account.Column> found = new ArrayList<>();
    for (Account.TableAccount table : facts.account().tables()) {
      found.addAll(table.columns());
    }
    Count out = Count.NONE;
    for (JsonNode column : wanted.get("columns")) {
      Account.Column match = match(column.get("heading").asText(), found);
      found.remove(match);
      Set<String> as = new HashSet<>();
      column.get("as").forEach(a -> as.add(a.asText()));
      String taken = match == null ? "" : match.as();
      boolean known = isOne(taken, as);
      Count one;
      if (!taken.isEmpty()) one = known ? new Count(1, 0, 0, 0, 0, 0, 0, 0) : wrong();
      else if (as.isEmpty()) one = new Count(0, 1, 0, 0, 0, 0, 0, 0);
      else
        one = match == null ? new Count(0, 0, 0, 0, 1, 0, 0, 0) : new Count(0, 0, 0, 1, 0, 0, 0, 0);
      if (one.right() + one.leftAlone() == 0) {
        String how = one.wrong() > 0 ? "WRONG" : one.named() > 0 ? "not understood" : "DROPPED";
        lines.add(
            name
                + " "
                + how
                + " '"
                + column.get("heading").asText()
                + "' "
                + as
                + " taken for '"
                + taken
                + "' "
                + (match == null ? "" : match.evidence()));
      }
      out = out.plus(one);
    }
    return out;
  }

  private static Count wrong() {
    return new Count(0, 0, 1, 0, 0, 0, 0, 0);
  }

  private static boolean isOne(String taken, Set<String> as) {
    if (taken.startsWith("surface "))
      return as.contains("location.surface") || as.contains("tile.tag");
    return as.contains(ROLES.getOrDefault(taken, taken));
  }

  private static Account.Column match(String heading, List<Account.Column> found) {
    String wanted = plain(heading);
    for (Account.Column c : found) if (plain(c.heading()).equals(wanted)) return c;
    for (Account.Column c : found) {
      String has = plain(c.heading());
      if (!wanted.isEmpty() && !has.isEmpty() && (has.endsWith(wanted) || wanted.endsWith(has)))
        return c;
    }
    return null;
  }

  private static Count tags(JsonNode wanted, Facts facts, String name, List<String> lines) {
    Project project = new Resolver(Checked.vocabulary()).resolve(List.of(facts), List.of());
    Set<String> glass = new HashSet<>();
    Set<String> known = new HashSet<>();
    for (Entry e : project.entries()) {
      known.add(plain(e.tag()));
      if (e.glass()) glass.add(plain(e.tag()));
    }
    Count out = Count.NONE;
    for (boolean is : new boolean[] {true, false}) {
      for (JsonNode tag : wanted.get(is ? "glass" : "notGlass")) {
        String t = plain(tag.asText());
        boolean right = is == glass.contains(t);
        boolean missing = is && !known.contains(t);
        if (!right)
          lines.add(
              name + " tag " + tag.asText() + (is ? " not seen as glass" : " taken for glass"));
        out =
            out.plus(
                new Count(0, 0, 0, 0, 0, right ? 1 : 0, right || missing ? 0 : 1, missing ? 1 : 0));
      }
    }
    return out;
  }

  /** A table of the figures, as {@code accuracy.md} has it. */
  static String table(Result result) {
    StringBuilder out = new StringBuilder();
    out.append(
        "| Kind | Columns | Right | Wrong | Not understood, and said so | Dropped | None of ours, left alone | Tags right | wrong | missing |\n");
    out.append("|---|---|---|---|---|---|---|---|---|---|\n");
    result.byKind().forEach((kind, c) -> out.append(line(kind, c)));
    out.append(line("**all**", result.all()));
    return out.toString();
  }

  private static String line(String kind, Count c) {
    return String.format(
        Locale.ROOT,
        "| %s | %d | %d (%.2f) | %d (%.2f) | %d (%.2f) | %d | %d | %d | %d | %d |%n",
        kind,
        c.meant(),
        c.right(),
        c.share(c.right()),
        c.wrong(),
        c.share(c.wrong()),
        c.named(),
        c.share(c.named()),
        c.dropped(),
        c.leftAlone(),
        c.tagsRight(),
        c.tagsWrong(),
        c.tagsMissing());
  }

  /** Prints the figures of a folder, and with {@code --log} each column that is not right. */
  public static void main(String[] args) throws IOException {
    Result result = of(Path.of(args[0]));
    System.out.print(table(result));
    if (args.length > 1 && args[1].equals("--log")) result.lines().forEach(System.out::println);
  }
}
