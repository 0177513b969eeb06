package clearbed.report.teach;

import clearbed.base.DisplayText;
import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigFile;
import clearbed.base.config.StandardFiles;
import clearbed.base.io.AtomicFile;
import clearbed.recognise.Facts;
import clearbed.recognise.vocabulary.Vocabulary;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A layer with a commented line for everything that was not understood. What a file says already
 * stays as it is, edited or not: lines are only ever put in.
 */
public final class TeachingLayer {
  private static final List<String> SECTIONS =
      List.of(Offer.COLUMNS, Offer.TERMS, "places", Offer.GLASS, Offer.TAGS);

  private static final String HEAD =
      """
      # What Clearbed could not read of these documents, one line each: what stands there, what it
      # may be, and why. Put a guess right, then take the # from before its line to confirm it:
      #   clearbed check DOCUMENTS --rules %s
      # columns: an attribute (and its unit: mortar.bond in psi), tag, material, surface wall, nothing
      # terms:   an attribute and one of its terms, or the attribute that the words speak of, or
      #          nothing; cut a phrase down to the few words that tell
      # places:  an exposure or a surface, as in  "Plant Deck": exterior
      # Attributes and their terms are in rulesets/vocabulary/attributes.yaml.
      layer: Words of this office
      """;

  private static final String LOOK = "# Not to be taught by a word; look at the place:";

  private static final Pattern SECTION = Pattern.compile("^( +)([a-z]+):\\s*(.*)$");
  private static final Pattern WORDS = Pattern.compile("^words:\\s*(?:#.*)?$");
  private static final Pattern TOP = Pattern.compile("^[^\\s#].*");

  /** A line that teaches, confirmed or not: its key, or the item of a list. */
  private static final Pattern LINE =
      Pattern.compile(
          "^\\s*#?\\s*(?:- *)?(?:(\"(?:[^\"\\\\]|\\\\.)*\")|'((?:[^']|'')*)'|([^\"'#\\s][^:#]*?))\\s*(?::\\s.*|#.*)?$");

  /** In characters; no word that is taught is longer. */
  private static final int LONGEST_LINE = 2_000;

  private static final Pattern OTHER_WORDS = Pattern.compile("^words:.*");

  private static final ObjectMapper JSON = new ObjectMapper();

  private final Path file;
  private final List<String> lines = new ArrayList<>();
  private int added;

  private TeachingLayer(Path file) {
    this.file = file;
  }

  /**
   * Writes or adds to the file.
   *
   * @return how many lines were put in
   * @throws IOException with the reason, when the file is no layer or cannot be written; it is then
   *     as it was
   */
  public static int write(Path file, List<Facts> facts, Vocabulary vocabulary) throws IOException {
    TeachingLayer layer = new TeachingLayer(file);
    layer.begin();
    List<Offer> offers = Offers.of(facts, vocabulary);
    for (String section : SECTIONS)
      layer.into(section, offers.stream().filter(o -> o.section().equals(section)).toList());
    layer.look(offers.stream().filter(o -> o.section().equals(Offer.NONE)).toList());
    layer.save();
    return layer.added;
  }

  /**
   * Makes sure that lines can be added to a file that is there.
   *
   * @throws ConfigException naming file, line and reason, when it is no layer
   */
  public static void requireLayer(Path file) throws IOException {
    ConfigFile there = ConfigFile.read(StandardFiles.given(file), "ruleset");
    if (!there.root().has("layer")) throw there.root().fault("is no layer of rules");
  }

  private void begin() throws IOException {
    if (Files.exists(file)) {
      requireLayer(file);
      lines.addAll(Files.readString(file, StandardCharsets.UTF_8).lines().toList());
    } else {
      String name = DisplayText.of(file.getFileName().toString());
      lines.addAll(HEAD.formatted(name).lines().toList());
    }
    if (words() >= 0) return;
    int other = find(OTHER_WORDS);
    if (other >= 0) throw flow(other, "words");
    lines.add("words:");
  }

  private int words() {
    return find(WORDS);
  }

  private int find(Pattern pattern) {
    for (int i = 0; i < lines.size(); i++) if (pattern.matcher(lines.get(i)).matches()) return i;
    return -1;
  }

  /** The line behind the words. */
  private int end() {
    for (int i = words() + 1; i < lines.size(); i++)
      if (TOP.matcher(lines.get(i)).matches()) return i;
    return lines.size();
  }

  private IOException flow(int at, String key) {
    return new IOException(
        "line "
            + (at + 1)
            + ": write what stands under '"
            + key
            + "' in lines of their own, so that others can be put beside them");
  }

  /** Sections by name, with the number of their line. */
  private Map<String, Integer> sections() {
    Map<String, Integer> out = new LinkedHashMap<>();
    int depth = 0;
    int end = end();
    for (int i = words() + 1; i < end; i++) {
      Matcher m = SECTION.matcher(lines.get(i));
      if (!m.matches() || !SECTIONS.contains(m.group(2))) continue;
      if (depth == 0) depth = m.group(1).length();
      if (m.group(1).length() == depth) out.put(m.group(2), i);
    }
    return out;
  }

  private void into(String section, List<Offer> offers) throws IOException {
    if (offers.isEmpty()) return;
    Map<String, Integer> sections = sections();
    String indent = sections.isEmpty() ? "  " : indent(sections.values().iterator().next());
    if (!sections.containsKey(section)) lines.add(end(), indent + section + ":");
    int at = sections().get(section);
    int next = sections().values().stream().filter(i -> i > at).min(Integer::compare).orElse(end());
    Matcher m = SECTION.matcher(lines.get(at));
    boolean open = m.matches() && (m.group(3).isBlank() || m.group(3).startsWith("#"));
    Set<String> known = known(at + 1, next);
    List<String> more = new ArrayList<>();
    String inner = inner(at + 1, next, indent + "  ");
    for (Offer offer : offers)
      if (!known.contains(plain(offer.words()))) more.add(line(offer, inner));
    if (more.isEmpty()) return;
    if (!open) throw flow(at, section);
    int to = next;
    while (to > at + 1 && lines.get(to - 1).isBlank()) to--;
    lines.addAll(to, more);
    added += more.size();
  }

  private String indent(int at) {
    String line = lines.get(at);
    return line.substring(0, line.length() - line.stripLeading().length());
  }

  /** As deep as the lines there are: taken from the comment, they must stand below each other. */
  private String inner(int from, int to, String usual) {
    for (int i = from; i < to; i++) {
      boolean confirmed = !lines.get(i).isBlank() && !lines.get(i).strip().startsWith("#");
      if (confirmed) return indent(i);
    }
    return usual;
  }

  private Set<String> known(int from, int to) {
    Set<String> out = new HashSet<>();
    for (int i = from; i < to; i++) {
      if (lines.get(i).length() > LONGEST_LINE) continue;
      Matcher m = LINE.matcher(lines.get(i));
      if (!m.matches()) continue;
      if (m.group(1) != null) out.add(plain(unquoted(m.group(1))));
      else if (m.group(2) != null) out.add(plain(m.group(2).replace("''", "'")));
      else out.add(plain(m.group(3)));
    }
    return out;
  }

  private static String unquoted(String written) {
    try {
      return JSON.readValue(written, String.class);
    } catch (JsonProcessingException e) {
      return written;
    }
  }

  private static String plain(String words) {
    return words.strip().toLowerCase(Locale.ROOT);
  }

  private static String line(Offer offer, String indent) {
    boolean listed = offer.guess().isEmpty();
    String said =
        listed ? "- " + quoted(offer.words()) : quoted(offer.words()) + ": " + value(offer.guess());
    return indent + "#" + said + "  # " + offer.remark();
  }

  /** A question mark is a key of YAML where it stands by itself. */
  private static String value(String guess) {
    return guess.contains(Offer.UNKNOWN) ? "'" + guess + "'" : guess;
  }

  /** As JSON writes it, which is YAML too; what is not seen as escapes. */
  private static String quoted(String words) {
    StringBuilder out = new StringBuilder("\"");
    words
        .codePoints()
        .forEach(
            c -> {
              if (c == '"' || c == '\\') out.append('\\').appendCodePoint(c);
              else if (c < ' ' || c == 0x7F || c == 0xFEFF || DisplayText.isUnsafe(c))
                out.append("\\u%04x".formatted(c));
              else out.appendCodePoint(c);
            });
    return out.append('"').toString();
  }

  /** What no word teaches stands behind all, as a note. */
  private void look(List<Offer> offers) {
    List<String> more = new ArrayList<>();
    Set<String> there = new HashSet<>(lines);
    for (Offer offer : offers) {
      String line = "#   " + offer.remark();
      if (!there.contains(line)) more.add(line);
    }
    if (more.isEmpty()) return;
    int at = lines.indexOf(LOOK);
    if (at < 0) {
      lines.add("");
      lines.add(LOOK);
      at = lines.size() - 1;
    }
    int to = at + 1;
    while (to < lines.size() && lines.get(to).startsWith("#   ")) to++;
    lines.addAll(to, more);
    added += more.size();
  }

  private void save() throws IOException {
    if (added == 0 && Files.exists(file)) return;
    byte[] text = (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8);
    // Never leave behind what could not be read again.
    ConfigFile.read(new StandardFiles.FileSource(file.toString(), text, true), "ruleset");
    AtomicFile.write(file, out -> out.write(text));
  }
}
