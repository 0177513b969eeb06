package clearbed.mark;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** Tells whether this program wrote a file, and whether anybody changed it since. */
public final class OwnMark {
  private static final int HEAD = 1 << 12;
  private static final byte[] ZIP = {'P', 'K', 3, 4};
  private static final byte[] OLE2 = {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0};

  private OwnMark() {}

  /**
   * What the file is of ours, or null.
   *
   * @throws IOException when it cannot be read
   */
  public static OwnOutput of(Path file) throws IOException {
    byte[] head;
    try (InputStream in = Files.newInputStream(file)) {
      head = in.readNBytes(HEAD);
    }
    try {
      return of(file, head);
    } catch (ZipException | RuntimeException damaged) {
      return null;
    }
  }

  private static OwnOutput of(Path file, byte[] head) throws IOException {
    if (starts(head, ZIP)) {
      try (ZipFile zip = new ZipFile(file.toFile())) {
        return PackageMark.of(zip);
      }
    }
    if (starts(head, OLE2)) {
      try (POIFSFileSystem files = new POIFSFileSystem(file.toFile(), true)) {
        return CompoundMark.of(files);
      }
    }
    OutputKind json = JsonMark.kind(head);
    if (json != null) return new OwnOutput(json, JsonMark.isUntouched(file, json));
    OwnOutput closed = ClosingLine.of(file);
    return closed == null ? TablesMark.of(file) : closed;
  }

  private static boolean starts(byte[] head, byte[] mark) {
    if (head.length < mark.length) return false;
    for (int i = 0; i < mark.length; i++) if (head[i] != mark[i]) return false;
    return true;
  }
}
