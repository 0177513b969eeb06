package clearbed.cli.output;

import clearbed.base.DisplayText;
import clearbed.cli.terminal.Failures;
import clearbed.cli.terminal.UsageFailure;
import clearbed.mark.OpenElsewhere;
import clearbed.mark.OutputKind;
import clearbed.mark.OwnMark;
import clearbed.mark.OwnOutput;
import clearbed.read.InputFile;
import clearbed.report.annotate.AnnotatedCopies;
import clearbed.report.teach.TeachingLayer;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What a command is about to write, held against all that it reads before anything is read: no
 * output takes the place of an input, of another output, or of work that is not its own.
 */
public final class Outputs {
  private final boolean overwrite;
  private final List<NamedPath> files = new ArrayList<>();
  private final List<NamedPath> folders = new ArrayList<>();
  private final List<NamedPath> layers = new ArrayList<>();
  private final List<NamedPath> read = new ArrayList<>();
  private final List<Path> documents = new ArrayList<>();
  private final Map<Path, FileState> before = new HashMap<>();
  private Path copies;
  private InputPaths inputs;

  /**
   * A path and the option that named it.
   *
   * @param another what to name instead
   */
  private record NamedPath(String option, Path path, String another) {
    UsageFailure refused(String why) {
      return new UsageFailure(option + " " + DisplayText.path(path.toString()) + ": " + why);
    }

    UsageFailure misplaced(String why) {
      return refused(why + "; name another " + another);
    }

    UsageFailure misplacedUnless(String why, String remedy) {
      return refused(why + "; " + remedy + " or name another " + another);
    }
  }

  /**
   * @param overwrite true when files of others that are no inputs may be replaced
   */
  public Outputs(boolean overwrite) {
    this.overwrite = overwrite;
  }

  /** A file that an option names to be read; null for none. */
  public Outputs reads(String option, Path file) {
    if (file != null) read.add(new NamedPath(option, file, "file"));
    return this;
  }

  /** Documents, folders and archives to be checked. */
  public Outputs documents(List<Path> paths) {
    documents.addAll(paths);
    return this;
  }

  /** A file to be written; null for none. */
  public Outputs writes(String option, Path file) {
    if (file != null) files.add(new NamedPath(option, file, "file"));
    return this;
  }

  /** A layer to which lines are added, and from which none is taken; null for none. */
  public Outputs addsTo(String option, Path file) {
    if (file != null) layers.add(new NamedPath(option, file, "file"));
    return this;
  }

  /** A folder to be filled; null for none. */
  public Outputs fills(String option, Path folder) {
    if (folder != null) folders.add(new NamedPath(option, folder, "folder"));
    return this;
  }

  /** A folder to be filled with copies, each under the path of its document; null for none. */
  public Outputs fillsWithCopies(String option, Path folder) {
    copies = folder;
    return fills(option, folder);
  }

  /**
   * Makes sure that every output may be written.
   *
   * @throws UsageFailure with what is in the way, and what to do
   */
  public void requireFree() {
    inputs = new InputPaths(documents);
    requireDistinct();
    for (NamedPath file : files) requireFree(file);
    for (NamedPath folder : folders) requireOwn(folder);
    for (NamedPath layer : layers) requireLayer(layer);
    for (NamedPath file : files) before.put(file.path(), FileState.of(file.path()));
    for (NamedPath file : layers) before.put(file.path(), FileState.of(file.path()));
  }

  /** True when nobody touched the file since it was found to be free. */
  public boolean isStillFree(Path file) {
    FileState then = before.get(file);
    return then == null || then.equals(FileState.of(file));
  }

  /** Puts the content of an output into its file. */
  public interface Writing {
    void run() throws IOException;
  }

  /**
   * Writes a file that is still free.
   *
   * @param err told in one line why a file is not written
   * @return true when it is
   */
  public boolean write(Path file, PrintWriter err, Writing writing) {
    String why = "somebody changed it meanwhile";
    if (isStillFree(file)) {
      try {
        writing.run();
        return true;
      } catch (IOException e) {
        why = Failures.oneLine(e);
      }
    }
    err.println("clearbed: " + DisplayText.path(file.toString()) + ": not written: " + why);
    return false;
  }

  private void requireDistinct() {
    List<NamedPath> all = new ArrayList<>(files);
    all.addAll(folders);
    all.addAll(layers);
    for (int i = 0; i < all.size(); i++) {
      for (NamedPath other : all.subList(0, i)) {
        if (RealPath.same(all.get(i).path(), other.path()))
          throw all.get(i).misplaced("is where " + other.option() + " writes too");
      }
    }
  }

  private void requireFree(NamedPath file) {
    if (isNew(file)) return;
    for (NamedPath input : read) {
      if (RealPath.same(file.path(), input.path()))
        throw file.misplaced("is the file of " + input.option() + ", which is only read");
    }
    requireClosed(file);
    requireReplaceable(file);
  }

  private boolean isNew(NamedPath file) {
    Path path = file.path();
    if (Files.isDirectory(path)) throw file.refused("is a folder; name a file");
    requireNoDeadLink(file);
    if (!Files.exists(path)) return true;
    if (!Files.isRegularFile(path)) throw file.misplaced("is a device or a pipe, not a file");
    return false;
  }

  private void requireLayer(NamedPath file) {
    if (isNew(file)) return;
    InputFile input = inputs.at(file.path());
    if (input != null) throw file.misplaced("is one of the documents");
    requireClosed(file);
    try {
      TeachingLayer.requireLayer(file.path());
    } catch (IOException e) {
      String reason = Failures.oneLine(e).replace(file.path() + ":", "line ");
      throw file.misplaced("is there already and no layer of rules (" + reason + ")");
    }
  }

  private void requireClosed(NamedPath file) {
    Path path = file.path();
    String lock = OpenElsewhere.lockFile(path);
    if (lock == null) lock = OpenElsewhere.lockFile(RealPath.of(path));
    if (lock != null)
      throw file.misplacedUnless("is open in another program (" + lock + ")", "close it there");
    if (RealPath.isProtected(path)) throw file.misplaced("is write-protected");
  }

  private void requireNoDeadLink(NamedPath place) {
    if (Files.isSymbolicLink(place.path()) && !Files.exists(place.path()))
      throw place.misplacedUnless("is a link that leads nowhere", "remove it");
  }

  private void requireReplaceable(NamedPath file) {
    InputFile input = inputs.at(file.path());
    if (input != null && input.named()) throw file.misplaced("is one of the documents to check");
    OwnOutput own = own(file.path());
    if (own != null && own.untouched()) return;
    boolean report = own != null && own.kind() != OutputKind.COPY;
    if (input != null && !report) throw file.misplaced("lies among the documents to check");
    if (overwrite) return;
    if (own == null)
      throw file.misplacedUnless("is there already and no output of clearbed", "add --overwrite");
    if (own.kind() != OutputKind.FINDINGS)
      throw file.misplacedUnless("was changed since clearbed wrote it", "add --overwrite");
    throw file.refused(
        "people may have typed into it since clearbed wrote it; to keep that, add --carry "
            + DisplayText.path(file.path().toString())
            + " and name another file with -o; to give it up, add --overwrite");
  }

  private void requireOwn(NamedPath folder) {
    Path path = folder.path();
    requireNoDeadLink(folder);
    if (Files.exists(path) && !Files.isDirectory(path))
      throw folder.refused("is a file; name a folder");
    Path real = RealPath.of(path);
    for (Path given : documents) {
      if (RealPath.of(given).startsWith(real))
        throw folder.refused("holds the documents to check; name a folder of its own");
    }
    InputFile held = Files.isDirectory(path) ? inputs.documentIn(real) : null;
    if (held != null)
      throw folder.misplaced("holds a document to check, " + DisplayText.path(held.path()));
    if (path.equals(copies)) requireFreeCopies(folder);
  }

  private void requireFreeCopies(NamedPath folder) {
    Path real = RealPath.of(folder.path());
    List<NamedPath> within =
        files.stream().filter(file -> RealPath.of(file.path()).startsWith(real)).toList();
    if (within.isEmpty() && !Files.isDirectory(folder.path())) return;
    for (InputFile input : inputs.all()) {
      for (String ending : List.of("", AnnotatedCopies.LIST_ENDING)) {
        Path target = folder.path().resolve(input.path() + ending);
        requireFreeCopy(new NamedPath(folder.option(), target, "folder"), within);
      }
    }
  }

  private void requireFreeCopy(NamedPath copy, List<NamedPath> within) {
    for (NamedPath file : within) {
      if (RealPath.same(copy.path(), file.path()))
        throw copy.misplaced("is where " + file.option() + " writes too");
    }
    if (Files.isSymbolicLink(copy.path())) throw copy.misplacedUnless("is a link", "remove it");
    requireFree(copy);
  }

  private static OwnOutput own(Path file) {
    try {
      return OwnMark.of(file);
    } catch (IOException unreadable) {
      return null;
    }
  }
}
