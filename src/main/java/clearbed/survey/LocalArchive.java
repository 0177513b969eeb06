package clearbed.survey;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The folders of an archive on this machine. */
public final class LocalArchive implements ProjectFinder.Listing {
  private static final String CACHE_TAG = "CACHEDIR.TAG";

  private final Path root;
  private final Set<Path> own = new HashSet<>();

  /**
   * @param ownOutputs files that the run writes, and folders that it writes into
   */
  public LocalArchive(Path root, Set<Path> ownOutputs) {
    this.root = root;
    for (Path output : ownOutputs) own.add(real(output));
  }

  @Override
  public List<String> names(String folder) throws IOException {
    List<String> names = new ArrayList<>();
    Path place = root.resolve(folder);
    try (DirectoryStream<Path> files = Files.newDirectoryStream(place)) {
      for (Path file : files) {
        if (own.contains(real(file)) || Files.exists(file.resolve(CACHE_TAG))) continue;
        String name = file.getFileName().toString();
        if (!Files.isDirectory(file)) names.add(name);
        else if (!isLinkBack(file)) names.add(name + "/");
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    names.sort(null);
    return names;
  }

  /** Where a project of that name lies. */
  public Path place(ProjectFinder.FoundProject project) {
    return project.name().equals(".") ? root : root.resolve(project.name());
  }

  /** A link to a folder above it would be followed for ever. */
  private static boolean isLinkBack(Path folder) {
    return Files.isSymbolicLink(folder) && real(folder.getParent()).startsWith(real(folder));
  }

  private static Path real(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException e) {
      return path.toAbsolutePath().normalize();
    }
  }
}
