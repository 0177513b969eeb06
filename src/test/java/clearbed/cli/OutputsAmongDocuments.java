package clearbed.cli;

import clearbed.model.document.Document;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;

/** For tests of what comes back: the outputs of a run, made once, and a folder to put them into. */
abstract class OutputsAmongDocuments {
  static final String SCHEDULE = "A-651-tile-schedule.xlsx";
  static final String NOTES = "A-650-interior-finish-notes.pdf";

  @TempDir static Path once;
  static SampleOutputs sample;

  @TempDir Path folder;

  @BeforeAll
  static void outputs() throws IOException {
    sample = SampleOutputs.in(once);
  }

  Path put(String file) throws IOException {
    return sample.put(file, folder);
  }

  Document read(String name) {
    return SampleOutputs.read(folder, name);
  }
}
