package clearbed.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Writes an archive of many small projects, for {@code survey}: folder, projects, files in each.
 */
final class WriteProjects {
  private static final int PROJECTS_IN_A_YEAR = 200;
  private static final long SEED = 20260115;

  private WriteProjects() {}

  public static void main(String[] words) throws IOException {
    Path folder = Path.of(words[0]);
    int projects = Integer.parseInt(words[1]);
    int files = Integer.parseInt(words[2]);
    for (int i = 0; i < projects; i++) {
      String name = String.format(Locale.ROOT, "%d/job-%05d", 2015 + i / PROJECTS_IN_A_YEAR, i);
      new Batch(SEED + i).write(folder.resolve(name), files);
    }
  }
}
