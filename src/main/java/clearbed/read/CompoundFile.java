package clearbed.read;

import java.io.IOException;
import java.util.Set;
import java.util.TreeSet;
import org.apache.poi.hpsf.DocumentSummaryInformation;
import org.apache.poi.hpsf.NoPropertySetStreamException;
import org.apache.poi.hpsf.PropertySet;
import org.apache.poi.hpsf.PropertySetFactory;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** The file within a file that Office 97 and encrypted Office documents are kept in. */
final class CompoundFile {
  private CompoundFile() {}

  /**
   * @param other the answer when it holds nothing that is read (an installer, a drawing)
   */
  static Detection detect(Source source, Detection other) {
    try (POIFSFileSystem files = new POIFSFileSystem(source.file().toFile(), true)) {
      // Some programs write the names in capitals or in small letters.
      Set<String> names = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
      names.addAll(files.getRoot().getEntryNames());
      if (names.contains("EncryptedPackage")) return Detection.refuse(Reasons.PASSWORD);
      if (isOwn(files)) return Detection.ignore("written by this tool");
      if (names.contains("Workbook") || names.contains("Book")) return Detection.as(Format.XLS);
      if (names.contains("WordDocument")) return Detection.as(Format.DOC);
      return other;
    } catch (IOException | RuntimeException e) {
      return Detection.refuse("damaged or truncated Office file; open and save it again");
    }
  }

  /** The mark is a custom document property, whose name starts with {@code Clearbed}. */
  private static boolean isOwn(POIFSFileSystem files) {
    try {
      PropertySet set =
          PropertySetFactory.create(
              files.getRoot(), DocumentSummaryInformation.DEFAULT_STREAM_NAME);
      return set instanceof DocumentSummaryInformation about
          && about.getCustomProperties() != null
          && about.getCustomProperties().keySet().stream()
              .anyMatch(name -> name.startsWith("Clearbed"));
    } catch (IOException | NoPropertySetStreamException | RuntimeException unmarked) {
      return false;
    }
  }
}
