package clearbed.strangers;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.yaml.snakeyaml.Yaml;

/** Words, phrases and figures that our vocabulary looks for, to be said over and over. */
public final class OwnWords {
  private static final String[] FIGURES = {
    "3 mm", "1/8 in", "1-1/2 in", "400 psi", "2.76 MPa", "95 percent", "12 ft", "1/8 in in 10 ft",
    "25 x 25 mm", "at least 95 %", "10 to 15 sq ft", "130 °F", "28 days", "L/360", "0.42", "1,250",
    "1.250,50", "R 10", "60 mil", "2 lb/1000 sq ft"
  };

  private static final String[] MARKS = {
    "[",
    "]",
    "(",
    ")",
    "[white] ",
    "(GT-1) ",
    "\"",
    "'",
    " ",
    "\t",
    "\u00a0",
    "-",
    "/",
    "A118/",
    "1.",
    ":",
    ", ",
    ";",
    "...",
    "____ ",
    "GT-1, ",
    "GT-1 to GT-9 ",
    "GT-",
    "C2TES1, ",
    "F-25LM ",
    "<b>",
    "&amp;",
    "|",
    "=",
    "\u202e",
    "X"
  };

  private OwnWords() {}

  /**
   * Pieces of every kind, the same for the same seed.
   *
   * @param count of pieces, 60 or more
   */
  public static List<String> pieces(int count, long seed) throws IOException {
    List<String> words = vocabulary();
    Random random = new Random(seed);
    Collections.shuffle(words, random);
    List<String> pieces = new ArrayList<>(List.of(MARKS));
    for (String figure : FIGURES) pieces.add(figure + " ");
    for (int i = 0; pieces.size() < count; i++) {
      String word = words.get(i % words.size());
      String other = words.get((i * 7 + 3) % words.size());
      String figure = FIGURES[i % FIGURES.length];
      pieces.add(
          switch (i % 5) {
            case 0, 1 -> word + " ";
            case 2 -> word + " " + figure + ", ";
            case 3 -> other + " " + word + " or ";
            default -> word + "; not " + other + ", ";
          });
    }
    return pieces.subList(0, count);
  }

  /** Every text of the vocabulary that is words and no expression, in order. */
  private static List<String> vocabulary() throws IOException {
    TreeSet<String> words = new TreeSet<>();
    try (Stream<Path> files = Files.list(Path.of("rulesets/vocabulary"))) {
      for (Path file : files.sorted().toList()) {
        try (Reader in = Files.newBufferedReader(file)) {
          collect(new Yaml().load(in), words);
        }
      }
    }
    return new ArrayList<>(words);
  }

  private static void collect(Object node, TreeSet<String> words) {
    if (node instanceof Map<?, ?> map) map.values().forEach(value -> collect(value, words));
    else if (node instanceof List<?> list) list.forEach(item -> collect(item, words));
    else if (node instanceof String text && text.matches("[\\p{L}\\d][\\p{L}\\d ./'-]{2,40}"))
      words.add(text);
  }
}
