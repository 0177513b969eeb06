package clearbed.survey;

import clearbed.cache.ResultCache;
import clearbed.read.InputFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** What tells whether a project is the one that was checked before. */
public final class ProjectKey {
  private ProjectKey() {}

  /**
   * A digest over every byte of a project, its name, the program and the rules; SHA-256,
   * hexadecimal.
   *
   * @param rules what else decides the result, in words
   * @param ownOutputs what the run writes
   * @throws IOException when a file cannot be read
   */
  public static String of(String name, Path place, List<String> rules, Set<Path> ownOutputs)
      throws IOException {
    List<String> words = new ArrayList<>(rules);
    words.add(name);
    List<ResultCache.NamedFile> parts = new ArrayList<>();
    for (InputFile file : InputFile.under(List.of(place), ownOutputs)) {
      boolean bytes = Files.isRegularFile(file.file()) && !file.isKnown();
      parts.add(new ResultCache.NamedFile(file.path(), bytes ? file.file() : null));
    }
    return ResultCache.key(words, parts);
  }
}
