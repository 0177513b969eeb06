package clearbed.mark;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The files that office programs leave beside a document that they have open. */
public final class OpenElsewhere {
  private OpenElsewhere() {}

  /** Name of such a file beside this one, or null. */
  public static String lockFile(Path file) {
    String name = file.getFileName() == null ? "" : file.getFileName().toString();
    for (String lock : names(name)) {
      if (Files.exists(file.resolveSibling(lock))) return lock;
    }
    return null;
  }

  /** Word takes its sign in place of the first letters of a long name, not before them. */
  private static List<String> names(String name) {
    List<String> names = new ArrayList<>(List.of("~$" + name, ".~lock." + name + "#"));
    int dot = name.lastIndexOf('.');
    int length = dot < 0 ? name.length() : dot;
    boolean word = name.toLowerCase(java.util.Locale.ROOT).endsWith(".docx");
    if (word && length == 7) names.add("~$" + name.substring(1));
    if (word && length > 7) names.add("~$" + name.substring(2));
    return names;
  }
}
