package clearbed.mark;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Map;
import java.util.TreeMap;
import org.apache.poi.hpsf.CustomProperties;
import org.apache.poi.hpsf.DocumentSummaryInformation;
import org.apache.poi.hpsf.NoPropertySetStreamException;
import org.apache.poi.hpsf.PropertySetFactory;
import org.apache.poi.hpsf.WritingNotSupportedException;
import org.apache.poi.poifs.filesystem.DirectoryEntry;
import org.apache.poi.poifs.filesystem.DocumentEntry;
import org.apache.poi.poifs.filesystem.DocumentInputStream;
import org.apache.poi.poifs.filesystem.Entry;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** The mark of an Office 97 file: a custom property that holds a digest over every other stream. */
public final class CompoundMark {
  private static final String PROPERTIES = DocumentSummaryInformation.DEFAULT_STREAM_NAME;

  private CompoundMark() {}

  /** What the file is of ours, or null. */
  public static OwnOutput of(POIFSFileSystem files) throws IOException {
    DocumentSummaryInformation about = about(files);
    CustomProperties custom = about == null ? null : about.getCustomProperties();
    Object value = custom == null ? null : custom.get(Seal.PROPERTY);
    Seal seal = Seal.of(value instanceof String text ? text : null);
    return seal == null ? null : seal.over(digest(files));
  }

  /** Writes a file of this format with its mark. */
  public static void write(byte[] file, OutputKind kind, OutputStream out) throws IOException {
    try (POIFSFileSystem files = new POIFSFileSystem(new ByteArrayInputStream(file))) {
      DocumentSummaryInformation about = about(files);
      if (about == null) about = PropertySetFactory.newDocumentSummaryInformation();
      CustomProperties custom = about.getCustomProperties();
      if (custom == null) custom = new CustomProperties();
      custom.put(Seal.PROPERTY, new Seal(kind, digest(files)).text());
      about.setCustomProperties(custom);
      about.write(files.getRoot(), PROPERTIES);
      files.writeFilesystem(out);
    } catch (WritingNotSupportedException e) {
      throw new IOException("its properties cannot be written", e);
    }
  }

  /** Null where there is none, or none that can be read. */
  private static DocumentSummaryInformation about(POIFSFileSystem files) {
    try {
      return PropertySetFactory.create(files.getRoot(), PROPERTIES)
              instanceof DocumentSummaryInformation about
          ? about
          : null;
    } catch (IOException | NoPropertySetStreamException | RuntimeException unmarked) {
      return null;
    }
  }

  private static String digest(POIFSFileSystem files) throws IOException {
    Map<String, DocumentEntry> streams = new TreeMap<>();
    gather(files.getRoot(), "", streams);
    MessageDigest digest = Sha256.begun();
    for (Map.Entry<String, DocumentEntry> each : streams.entrySet()) {
      String head = each.getKey() + "\t" + each.getValue().getSize() + "\n";
      digest.update(head.getBytes(StandardCharsets.UTF_8));
      try (InputStream in = new DocumentInputStream(each.getValue())) {
        digest.update(in.readAllBytes());
      }
    }
    return Sha256.hex(digest);
  }

  private static void gather(DirectoryEntry folder, String path, Map<String, DocumentEntry> into) {
    for (Entry entry : folder) {
      String name = path + "/" + entry.getName();
      if (entry instanceof DirectoryEntry inner) gather(inner, name, into);
      else if (entry instanceof DocumentEntry stream && !name.equals("/" + PROPERTIES))
        into.put(name, stream);
    }
  }
}
