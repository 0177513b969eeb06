package clearbed.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * What the folders above a project say of it: nothing is made out but what a folder is called.
 *
 * @param levels what the folders below the archive are, the outermost first, as the user says;
 *     empty where nobody says
 */
public record Groups(List<String> levels) {
  /** A folder of this name is a year; a number among other words may be anything. */
  private static final Pattern YEAR = Pattern.compile("(?:19|20)[0-9]{2}");

  private static final String YEAR_LEVEL = "Year";

  public Groups {
    levels = List.copyOf(levels);
  }

  /** The value of each level that a project has one for, by the name of the level. */
  public Map<String, String> of(String project) {
    String[] folders = project.split("/");
    Map<String, String> out = new LinkedHashMap<>();
    for (int i = 0; i + 1 < folders.length; i++) {
      String level = i < levels.size() ? levels.get(i) : "Folder " + (i + 1);
      out.put(level, folders[i]);
    }
    if (levels.isEmpty()) {
      List<String> years = new ArrayList<>();
      for (String folder : folders) if (YEAR.matcher(folder).matches()) years.add(folder);
      if (years.size() == 1) out.put(YEAR_LEVEL, years.get(0));
    }
    return out;
  }

  /** How they are told, in words. */
  public String told() {
    return levels.isEmpty()
        ? "By the names of the folders above a project, as they stand; a folder whose whole name is a"
            + " year is one. Name the levels by --levels, such as --levels office,year."
        : "By the names of the folders above a project, which --levels says are: "
            + String.join(", ", levels)
            + ".";
  }
}
