package clearbed.corpus;

import clearbed.samples.Outline;
import clearbed.samples.Schedule;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The clean sets, read from {@code src/test/resources/corpus/NAME.set}.
 *
 * <p>A set file starts with {@code rules}, {@code glass}, {@code other} and {@code bundle} lines,
 * then has a {@code === kind path | sheet} line before each file.
 */
final class Corpus {
  private static final List<String> NAMES =
      List.of(
          "alderfen-baths",
          "bramhollow-kiosk",
          "corrie-lane-clinic",
          "dunmere-spa",
          "eskwater-pool",
          "farrowgate-station",
          "gullhaven-hotel",
          "harrowmead-flats",
          "inverlorn-baths",
          "juniper-row-school",
          "kelpstrand-aquarium",
          "larchmoor-arcade",
          "mossbridge-library",
          "nettlecombe-lido",
          "tarnwick-baths");

  /** Unseen sets written when those of {@link #LAST} had been opened, likewise. */
  private static final List<String> NEWEST =
      List.of(
          "ivelmoor-bakery",
          "pendrake-ferry",
          "pendrake-landing",
          "ossingham-library",
          "stallbridge-depot",
          "skelvane-thermen",
          "porthelin-marram");

  /**
   * Unseen sets written when the fresh ones had been opened, by somebody who had not read the
   * rules.
   */
  private static final List<String> LAST =
      List.of(
          "brindlecot-cannery",
          "cawdlow-observatory",
          "dunlarrow-creamery",
          "eddershaw-hospice",
          "fallowmere-natatorium",
          "gorsewick-winery",
          "hazelmarch-firehouse");

  /** Sets written apart from the tool, for one measurement at the end; see {@link HeldBack}. */
  private static final List<String> UNSEEN =
      List.of(
          "osmund-quay-terminal",
          "pellwater-market",
          "quillan-dental",
          "ravensmere-forum",
          "sallowfield-college",
          "thornwick-springs",
          "umberlow-exchange");

  /** Sets written after the figures of the unseen ones were read, by one who saw no rules. */
  private static final List<String> FRESH =
      List.of(
          "vellanby-natatorium",
          "wickenholt-taproom",
          "yarrowick-concourse",
          "zennerby-residence",
          "arkenholme-lido",
          "cobblewyke-academy",
          "drossmoor-clinic");

  private Corpus() {}

  static List<DraftSet> sets() {
    return Stream.of(NAMES, UNSEEN, FRESH, LAST, NEWEST)
        .flatMap(List::stream)
        .map(Corpus::set)
        .toList();
  }

  static boolean unseen(String name) {
    return UNSEEN.contains(name) || fresh(name) || last(name) || newest(name);
  }

  /** True for the second seven of the unseen sets. */
  static boolean fresh(String name) {
    return FRESH.contains(name);
  }

  /** True for the unseen sets that were written last of all. */
  static boolean newest(String name) {
    return NEWEST.contains(name);
  }

  /** True for the unseen sets that were written and opened last but one. */
  static boolean last(String name) {
    return LAST.contains(name);
  }

  static DraftSet set(String name) {
    String source = new String(bytes(name + ".set"), StandardCharsets.UTF_8);
    String[] parts = source.split("(?m)^=== ");
    Map<String, String> head = new LinkedHashMap<>();
    for (String line : parts[0].lines().toList()) {
      if (line.startsWith("%") || line.isBlank()) continue;
      String[] pair = line.split(":", 2);
      head.put(pair[0].strip(), pair[1].strip());
    }
    List<DraftFile> files = new ArrayList<>();
    for (String part : Arrays.asList(parts).subList(1, parts.length)) files.add(file(name, part));
    return new DraftSet(
        name,
        head.get("rules"),
        words(head.get("glass")),
        words(head.get("other")),
        head.getOrDefault("bundle", ""),
        files);
  }

  private static DraftFile file(String set, String part) {
    String[] lines = part.split("\n", 2);
    String[] kind = lines[0].strip().split(" ", 2);
    String[] place = kind[1].split("\\|");
    String path = place[0].strip();
    return switch (kind[0]) {
      case "schedule" ->
          new DraftFile.ScheduleFile(path, place[1].strip(), Schedule.parse(lines[1]));
      case "section" -> new DraftFile.SectionFile(path, Outline.parse(lines[1]));
      case "notes" -> new DraftFile.NotesFile(path, Outline.parse(lines[1]));
      case "frozen" ->
          new DraftFile.FrozenFile(
              path, bytes("frozen/" + set + "/" + path), Outline.parse(lines[1]));
      default -> throw new IllegalArgumentException("no file kind " + kind[0] + " in " + set);
    };
  }

  private static Set<String> words(String line) {
    return new LinkedHashSet<>(Arrays.asList(line.split("\\s+")));
  }

  private static byte[] bytes(String resource) {
    try (InputStream in = Corpus.class.getResourceAsStream("/corpus/" + resource)) {
      if (in == null) throw new IllegalStateException("no resource corpus/" + resource);
      return in.readAllBytes();
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }
}
