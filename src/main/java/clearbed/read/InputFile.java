package clearbed.read;

import clearbed.read.detect.FormatDetector;
import clearbed.read.source.DistinctPaths;
import clearbed.read.source.FileWalk;
import clearbed.read.source.Source;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** A file that a batch finds under its arguments, before it is read. */
public final class InputFile {
  private final Source source;
  private final FileWalk.FoundFile found;

  private InputFile(Source source, FileWalk.FoundFile found) {
    this.source = source;
    this.found = found;
  }

  /** All under the paths, those too that will be passed over. */
  public static List<InputFile> under(List<Path> paths) {
    return under(paths, Set.of());
  }

  /**
   * The same, but for what the run writes.
   *
   * @param ownOutputs files, and folders that are written into
   */
  public static List<InputFile> under(List<Path> paths, Set<Path> ownOutputs) {
    List<FileWalk.FoundFile> found = new FileWalk(ownOutputs).find(paths);
    List<Source> sources = DistinctPaths.of(found);
    List<InputFile> files = new ArrayList<>();
    for (int i = 0; i < found.size(); i++) {
      files.add(new InputFile(sources.get(i), found.get(i)));
    }
    return files;
  }

  /** As it will be in {@link clearbed.model.document.Document#path()}. */
  public String path() {
    return source.path();
  }

  /** Where it lies. */
  public Path file() {
    return found.file();
  }

  /** True when it need not be opened: what is to be said of it is known. */
  public boolean isKnown() {
    return source.known() != null;
  }

  /** True when it was named itself, rather than a folder that holds it. */
  public boolean named() {
    return found.named();
  }

  /** True when it, or what lies in it, will be read or should be readable. */
  public boolean isDocument() {
    if (source.known() != null) return false;
    try {
      return isArchive() || !FormatDetector.detect(source).ignored();
    } catch (IOException | RuntimeException unreadable) {
      return true;
    }
  }

  /** True when what lies in it is read, not the file itself. */
  public boolean isArchive() {
    return source.known() == null && source.extension().equals("zip");
  }
}
