package clearbed;

import clearbed.base.config.StandardFiles;
import clearbed.calc.guideline.Expansions;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.check.Checker;
import clearbed.recognise.vocabulary.Vocabulary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Edited files beside the program, as a specifier has them; only for tests that run alone. */
final class BesideTheProgram implements BeforeEachCallback, AfterEachCallback {
  private static final String HOME = "clearbed.home";

  private Path home;
  private String before;

  @Override
  public void beforeEach(ExtensionContext context) throws IOException {
    home = Files.createTempDirectory("clearbed-home");
    before = System.getProperty(HOME);
    System.setProperty(HOME, home.toString());
  }

  @Override
  public void afterEach(ExtensionContext context) throws IOException {
    if (before == null) System.clearProperty(HOME);
    else System.setProperty(HOME, before);
    try (var files = Files.walk(home)) {
      for (Path file : files.sorted((a, b) -> b.compareTo(a)).toList()) Files.delete(file);
    }
  }

  /** The only file that is not as it was shipped. */
  void put(String file, String text) throws IOException {
    Path place = home.resolve("rulesets").resolve(file);
    Files.createDirectories(place.getParent());
    Files.writeString(place, text);
  }

  /** The message that a file is refused with; empty when it is accepted. */
  String refusal(String file, String text) throws IOException {
    put(file, text);
    try {
      if (file.equals("guidelines/ej171.yaml")) MovementGuideline.standard();
      else if (file.equals("guidelines/expansion.yaml")) Expansions.standard();
      else if (file.startsWith("guidelines/")) MovementGuideline.read(StandardFiles.open(file));
      else if (file.startsWith("vocabulary/")) rules(Vocabulary.standard(), "north-america");
      else rules(Checked.vocabulary(), file.replace(".yaml", ""));
      return "";
    } catch (IOException e) {
      return e.getMessage();
    }
  }

  private static void rules(Vocabulary vocabulary, String set) throws IOException {
    Checker.ruleSets(vocabulary).load(set, List.of());
  }
}
