package clearbed.survey;

import clearbed.read.detect.FormatDetector;
import clearbed.read.source.FileWalk;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The projects below an archive: every folder and zip file at one depth. Where no depth is given,
 * it is the least at which documents stand in a folder; a zip file above that depth is a project,
 * too.
 */
public final class ProjectFinder {
  /** What lies in a folder: names, those of folders with {@code /} at their end. */
  public interface Listing {
    /**
     * @param folder path below the archive, empty for the archive itself
     */
    List<String> names(String folder) throws IOException;
  }

  /** Folders nested deeper than this are no order of projects. */
  private static final int DEEPEST = 12;

  private final Listing listing;
  private final List<FoundProject> projects = new ArrayList<>();
  private final Set<String> aside = new TreeSet<>();

  private ProjectFinder(Listing listing) {
    this.listing = listing;
  }

  /**
   * @param name path below the archive; {@code .} for the archive itself
   */
  public record FoundProject(String name, boolean zip) {}

  /**
   * @param depth at which the projects stand, 0 for the archive itself
   * @param aside files that may be documents and stand beside or above the projects
   * @param alike names that most projects share with one under another folder: parts of projects
   *     rather than projects
   */
  public record FoundProjects(
      List<FoundProject> projects, int depth, List<String> aside, List<String> alike) {}

  /**
   * @param depth of the projects below the archive, 1 or more; or 0 where it is to be found
   * @throws IOException when a folder cannot be listed
   */
  public static FoundProjects find(Listing listing, int depth) throws IOException {
    ProjectFinder finder = new ProjectFinder(listing);
    int used = depth > 0 ? depth : finder.depth();
    if (used == 0) finder.projects.add(new FoundProject(".", false));
    else finder.collect("", 1, used);
    finder.projects.sort(Comparator.comparing(FoundProject::name));
    return new FoundProjects(
        List.copyOf(finder.projects), used, List.copyOf(finder.aside), finder.alike());
  }

  /** Level by level, so that a large archive is looked through no further than is needed. */
  private int depth() throws IOException {
    List<String> level = List.of("");
    int zips = 0;
    boolean top = false;
    for (int depth = 0; depth <= DEEPEST && !level.isEmpty(); depth++) {
      List<String> next = new ArrayList<>();
      boolean documents = false;
      for (String folder : level) {
        for (String name : names(folder)) {
          if (name.endsWith("/")) next.add(folder + name);
          else if (isZip(name)) zips++;
          else documents |= FormatDetector.isReadName(name);
        }
      }
      if (depth == 0) top = documents && next.isEmpty() && zips == 0;
      else if (documents) return depth;
      next.sort(Comparator.naturalOrder());
      level = next;
    }
    // Zips alone stand wherever they stand; folders without any document are no projects.
    return top ? 0 : zips > 0 ? DEEPEST : 1;
  }

  private void collect(String folder, int depth, int wanted) throws IOException {
    for (String name : names(folder)) {
      String path = folder + name;
      if (isZip(name)) projects.add(new FoundProject(path, true));
      else if (!name.endsWith("/")) {
        if (FormatDetector.isReadName(name)) aside.add(path);
      } else if (depth == wanted)
        projects.add(new FoundProject(path.substring(0, path.length() - 1), false));
      else collect(path, depth + 1, wanted);
    }
  }

  private List<String> names(String folder) throws IOException {
    return listing.names(folder).stream().filter(name -> !FileWalk.isPassedOver(name)).toList();
  }

  private static boolean isZip(String name) {
    return name.toLowerCase(java.util.Locale.ROOT).endsWith(".zip");
  }

  private List<String> alike() {
    Map<String, Integer> counts = new HashMap<>();
    for (FoundProject project : projects) counts.merge(last(project), 1, Integer::sum);
    Set<String> shared = new HashSet<>();
    int among = 0;
    for (FoundProject project : projects) {
      if (project.zip() || !project.name().contains("/") || counts.get(last(project)) < 2) continue;
      shared.add(last(project));
      among++;
    }
    return among * 2 > projects.size() ? List.copyOf(new TreeSet<>(shared)) : List.of();
  }

  private static String last(FoundProject project) {
    return project.name().substring(project.name().lastIndexOf('/') + 1);
  }
}
