package clearbed.project;

import clearbed.check.Checker;
import clearbed.check.rules.RuleSet;
import clearbed.recognise.Facts;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.taught.Lessons;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * Which rules a user wants.
 *
 * @param set name of a bundled set, or null where the documents are to decide
 * @param layers rule files laid over it, the later over the earlier
 */
public record RuleChoice(String set, List<Path> layers) {
  public RuleChoice {
    layers = List.copyOf(layers);
  }

  /**
   * The shipped words, those that the layers teach, and what a set teaches itself.
   *
   * @throws IOException naming file, line and reason
   */
  public Vocabulary vocabulary(Lessons lessons) throws IOException {
    return Vocabulary.standard(layers, lessons);
  }

  /** The set that was named, or the one that holds where nothing says which. */
  public String first() {
    return set == null ? CitedSet.NORTH_AMERICA : set;
  }

  /** Every set that may come to hold. */
  public List<String> possible() {
    return set == null ? List.of(CitedSet.NORTH_AMERICA, CitedSet.ISO_EN) : List.of(set);
  }

  /** The set for what was read: as named, else by what the documents cite. */
  public CitedSet forDocuments(List<Facts> facts) {
    return set == null ? CitedSet.of(facts) : new CitedSet(set, "");
  }

  /**
   * A bundled set with the layers over it.
   *
   * @throws IOException naming file, line and reason
   */
  public RuleSet load(Vocabulary vocabulary, String name) throws IOException {
    return Checker.ruleSets(vocabulary).load(name, layers);
  }
}
