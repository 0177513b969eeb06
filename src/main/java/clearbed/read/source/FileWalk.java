package clearbed.read.source;

import clearbed.mark.OwnOutput;
import clearbed.model.document.Document;
import java.io.IOException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** Finds the files under the arguments, each once, and says which are passed over and why. */
public final class FileWalk {
  private static final Pattern CACHE = Pattern.compile("clearbed-[0-9a-f]{16}");

  private final Set<Path> ownOutputs = new HashSet<>();
  private final Set<Path> seen = new HashSet<>();

  public FileWalk(Set<Path> ownOutputs) {
    for (Path output : ownOutputs) this.ownOutputs.add(real(output));
  }

  public List<Source> walk(List<Path> arguments) {
    return DistinctPaths.of(find(arguments));
  }

  public List<FoundFile> find(List<Path> arguments) {
    List<FoundFile> all = new ArrayList<>();
    for (Path argument : arguments) {
      Path given = argument.toAbsolutePath().normalize();
      List<FoundFile> found = new ArrayList<>();
      if (Files.isDirectory(given)) visit(given, found);
      else found.add(single(argument, given));
      found.removeIf(f -> !seen.add(f.file()));
      found.sort(Comparator.comparing(FoundFile::relative));
      all.addAll(found);
    }
    return all;
  }

  /**
   * A file and what is known of it.
   *
   * @param base folder to tell it from a namesake under another argument
   * @param exclusion why it is not to be opened, or null
   */
  public record FoundFile(
      Path base, String relative, Path file, boolean named, Exclusion exclusion) {}

  record Exclusion(boolean ignored, String reason) {
    Document document(String path) {
      String format = Source.extensionOf(path.substring(path.lastIndexOf('/') + 1));
      return ignored
          ? Document.ignored(path, format, reason)
          : Document.unreadable(path, format, reason);
    }
  }

  private FoundFile single(Path argument, Path given) {
    Path fileName = given.getFileName();
    String name = fileName == null ? argument.toString() : fileName.toString();
    Exclusion exclusion = Files.exists(given) ? exclusion(given, name, true) : missing();
    return new FoundFile(given.getParent(), name, given, true, exclusion);
  }

  private static Exclusion missing() {
    return new Exclusion(false, Reasons.MISSING);
  }

  private Exclusion exclusion(Path file, String name, boolean named) {
    if (isOwnOutput(file)) return new Exclusion(true, "written by this run");
    String passedOver = PassedOver.reason(name, named);
    if (passedOver != null) return new Exclusion(true, passedOver);
    if (!Files.isRegularFile(file)) return new Exclusion(true, "not a regular file");
    return null;
  }

  /** True for a file or folder, told by its name alone, that is never looked into. */
  public static boolean isPassedOver(String name) {
    return PassedOver.reason(name, false) != null;
  }

  private boolean isOwnOutput(Path file) {
    if (ownOutputs.isEmpty()) return false;
    for (Path p = real(file); p != null; p = p.getParent()) if (ownOutputs.contains(p)) return true;
    return false;
  }

  private static Path real(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException e) {
      return path.toAbsolutePath().normalize();
    }
  }

  private void visit(Path root, List<FoundFile> found) {
    try {
      Files.walkFileTree(
          root,
          EnumSet.of(FileVisitOption.FOLLOW_LINKS),
          Integer.MAX_VALUE,
          new Visitor(root, found));
    } catch (IOException e) {
      found.add(new FoundFile(root, ".", root, false, new Exclusion(false, Reasons.of(e, null))));
    }
  }

  private final class Visitor extends SimpleFileVisitor<Path> {
    private final Path root;
    private final List<FoundFile> found;

    Visitor(Path root, List<FoundFile> found) {
      this.root = root;
      this.found = found;
    }

    @Override
    public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
      if (folder.equals(root)) return FileVisitResult.CONTINUE;
      if (isOwnOutput(folder)) return skip(folder, new Exclusion(true, "written by this run"));
      if (isCache(folder)) return skip(folder, new Exclusion(true, OwnOutput.NOT_READ));
      if (folder.getFileName().toString().startsWith(".")) {
        return skip(folder, new Exclusion(true, "hidden folder"));
      }
      return FileVisitResult.CONTINUE;
    }

    /** What {@code --cache} keeps, told by its name and by the tag beside it. */
    private static boolean isCache(Path folder) {
      return CACHE.matcher(folder.getFileName().toString()).matches()
          && Files.exists(folder.resolveSibling("CACHEDIR.TAG"));
    }

    private FileVisitResult skip(Path folder, Exclusion exclusion) {
      add(folder, exclusion);
      return FileVisitResult.SKIP_SUBTREE;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
      add(file, exclusion(file, file.getFileName().toString(), false));
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException e) {
      boolean loop = e instanceof FileSystemLoopException;
      add(
          file,
          loop
              ? new Exclusion(true, "a link back to a folder above it")
              : new Exclusion(false, Reasons.of(e, null)));
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path folder, IOException e) {
      if (e != null)
        add(folder, new Exclusion(false, "this folder could not be listed to its end"));
      return FileVisitResult.CONTINUE;
    }

    private void add(Path file, Exclusion exclusion) {
      StringBuilder relative = new StringBuilder();
      for (Path part : root.relativize(file)) {
        if (relative.length() > 0) relative.append('/');
        relative.append(part);
      }
      found.add(new FoundFile(root, relative.toString(), file, false, exclusion));
    }
  }
}
