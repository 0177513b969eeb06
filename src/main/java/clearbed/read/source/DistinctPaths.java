package clearbed.read.source;

import clearbed.read.source.FileWalk.FoundFile;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Names files so that no two share a name: namesakes get the folder of their argument before them.
 */
public final class DistinctPaths {
  private DistinctPaths() {}

  public static List<Source> of(List<FoundFile> found) {
    Map<String, Integer> uses = new HashMap<>();
    for (FoundFile f : found) uses.merge(f.relative(), 1, Integer::sum);
    Set<String> taken = new HashSet<>();
    for (FoundFile f : found) if (uses.get(f.relative()) == 1) taken.add(f.relative());
    List<Source> sources = new ArrayList<>(found.size());
    for (FoundFile f : found) {
      String path = uses.get(f.relative()) == 1 ? f.relative() : distinct(f, found, taken);
      sources.add(source(f, path));
    }
    return sources;
  }

  private static Source source(FoundFile f, String path) {
    return f.exclusion() == null
        ? new Source(path, f.file(), f.named(), false)
        : Source.of(f.exclusion().document(path));
  }

  private static String distinct(FoundFile f, List<FoundFile> all, Set<String> taken) {
    List<FoundFile> namesakes =
        all.stream().filter(o -> o.relative().equals(f.relative())).toList();
    int depths = f.base() == null ? 0 : f.base().getNameCount();
    for (int depth = 1; depth <= depths; depth++) {
      String path = prefixed(f, depth);
      int d = depth;
      long same = namesakes.stream().filter(o -> prefixed(o, d).equals(path)).count();
      if (same == 1 && taken.add(path)) return path;
    }
    // The very same path given twice, or folders that cannot be told apart: number them.
    int n = 1;
    while (!taken.add(f.relative() + " (" + n + ")")) n++;
    return f.relative() + " (" + n + ")";
  }

  private static String prefixed(FoundFile f, int depth) {
    StringBuilder path = new StringBuilder();
    Path base = f.base();
    if (base != null) {
      int names = base.getNameCount();
      for (int i = Math.max(0, names - depth); i < names; i++) {
        path.append(base.getName(i)).append('/');
      }
    }
    return path.append(f.relative()).toString();
  }
}
