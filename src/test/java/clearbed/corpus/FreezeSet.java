package clearbed.corpus;

import clearbed.samples.Rendering;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Writes the Word file from which a frozen file is made with an office program.
 *
 * <p>Run it, then {@code soffice --headless --convert-to doc} on the result, and put that under
 * {@code src/test/resources/corpus/frozen}.
 */
final class FreezeSet {
  private FreezeSet() {}

  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[0]);
    for (DraftSet set : Corpus.sets()) {
      for (DraftFile file : set.files()) {
        if (!(file instanceof DraftFile.FrozenFile frozen)) continue;
        String name = frozen.path().replaceFirst("\\.[^.]+$", ".docx");
        Files.write(folder.resolve(name), Rendering.outline(frozen.source(), name));
        System.out.println(set.name() + ": " + folder.resolve(name));
      }
    }
  }
}
