package clearbed.recognise;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Short lines that stand word for word on page after page, as the name of the project or of the
 * office: they name nothing that comes below them.
 */
final class RepeatedLines {
  /** Fewer might be titles of the same work in two parts. */
  private static final int FEWEST = 3;

  private static final int LONGEST = 100;

  private final Set<String> lines;

  private RepeatedLines(Set<String> lines) {
    this.lines = lines;
  }

  static RepeatedLines of(Document document, Vocabulary vocabulary) {
    Map<String, Integer> times = new HashMap<>();
    for (Block block : document.blocks()) {
      if (!(block instanceof Paragraph p) || p.headingLevel() > 0 || p.text().length() > LONGEST)
        continue;
      times.merge(PlainText.of(p.text()).strip(), 1, Integer::sum);
    }
    return new RepeatedLines(
        times.entrySet().stream()
            .filter(line -> line.getValue() >= FEWEST)
            .map(Map.Entry::getKey)
            .filter(line -> namesNothing(line, vocabulary))
            .collect(Collectors.toUnmodifiableSet()));
  }

  /** A title over the work of several tiles would name its part of the work, or a tile. */
  private static boolean namesNothing(String line, Vocabulary vocabulary) {
    // "Material sheet" is of paper.
    return Set.of("", "tile").contains(vocabulary.family(line))
        && !TileWords.tileWork(line)
        && !vocabulary.list("glassAlone").in(line)
        && TagFinder.tags(line).isEmpty()
        && vocabulary.taught().tagsIn(line).isEmpty();
  }

  boolean has(String line) {
    return lines.contains(line);
  }
}
