package clearbed.spark;

import java.io.File;
import java.io.IOException;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.io.FileUtils;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.spark.deploy.SparkHadoopUtil;

/** A folder of any file system that Spark knows. */
record Place(String uri) implements Serializable {
  private org.apache.hadoop.fs.Path path(String below) {
    // A name may hold a colon, which would read as a scheme.
    var root = new org.apache.hadoop.fs.Path(uri);
    return below.isEmpty() ? root : new org.apache.hadoop.fs.Path(root, "./" + below);
  }

  private FileSystem files() throws IOException {
    return path("").getFileSystem(SparkHadoopUtil.get().conf());
  }

  /** What lies in a folder, those of folders with {@code /} at their end. */
  List<String> names(String folder) {
    try {
      List<String> names = new ArrayList<>();
      for (FileStatus each : files().listStatus(path(folder)))
        names.add(each.getPath().getName() + (each.isDirectory() ? "/" : ""));
      names.sort(null);
      return names;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Path, length and time of each file of a project, or of the zip file that it is. */
  List<String> files(String name) throws IOException {
    List<String> found = new ArrayList<>();
    for (var all = files().listFiles(path(name), true); all.hasNext(); ) {
      FileStatus file = all.next();
      found.add(file.getPath() + "\0" + file.getLen() + "\0" + file.getModificationTime());
    }
    found.sort(null);
    return found;
  }

  /** Copies a project into a folder of this machine, and gives what is to be checked. */
  Path fetch(String name, Path into) throws IOException {
    var target = new org.apache.hadoop.fs.Path(into.toUri());
    files().copyToLocalFile(false, path(name), target, true);
    return into.resolve(files().makeQualified(path(name)).getName());
  }

  boolean has(String name) throws IOException {
    return files().exists(path(name));
  }

  byte[] read(String name) {
    try (var in = files().open(path(name))) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Puts a file into place whole; of several that do so at once, one stays, and all are equal. */
  void put(String name, byte[] bytes, String attempt) throws IOException {
    FileSystem files = files();
    org.apache.hadoop.fs.Path part = path(name + "." + attempt + ".part");
    try (var out = files.create(part, true)) {
      out.write(bytes);
    }
    if (files.exists(path(name)) || !files.rename(part, path(name))) files.delete(part, false);
    if (!files.exists(path(name))) throw new IOException(path(name) + ": could not be written");
  }

  /** Copies what was written on this machine, over what is there. */
  void take(Path folder) throws IOException {
    for (File each : FileUtils.listFiles(folder.toFile(), null, true)) {
      String name = folder.relativize(each.toPath()).toString();
      var from = new org.apache.hadoop.fs.Path(each.toURI());
      files().copyFromLocalFile(false, true, from, path(name));
    }
  }
}
