package clearbed.read.detect;

import clearbed.mark.CompoundMark;
import clearbed.mark.OwnOutput;
import clearbed.read.source.Format;
import clearbed.read.source.Reasons;
import clearbed.read.source.Source;
import java.io.IOException;
import java.util.Set;
import java.util.TreeSet;
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
      OwnOutput own = CompoundMark.of(files);
      if (own != null && own.untouched()) return Detection.ignore(OwnOutput.NOT_READ);
      if (names.contains("Workbook") || names.contains("Book")) return Detection.as(Format.XLS);
      if (names.contains("WordDocument")) return Detection.as(Format.DOC);
      return other;
    } catch (IOException | RuntimeException e) {
      return Detection.refuse("damaged or truncated Office file; open and save it again");
    }
  }
}
