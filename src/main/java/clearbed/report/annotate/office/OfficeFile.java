package clearbed.report.annotate.office;

import clearbed.base.io.FixedZip;
import clearbed.base.io.TemporaryFolder;
import clearbed.mark.OutputKind;
import clearbed.mark.PackageMark;
import clearbed.report.annotate.note.FindingNote;
import clearbed.report.annotate.note.Job;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.ooxml.POIXMLDocument;
import org.apache.poi.openxml4j.opc.PackageRelationshipTypes;

/** What is alike in writing Excel and Word copies. */
final class OfficeFile {
  private OfficeFile() {}

  /** Writes the document with the mark of a copy; same content, same bytes. */
  static void write(POIXMLDocument document, OutputStream out) throws IOException {
    PackageMark.announce(document.getProperties().getCustomProperties(), OutputKind.COPY);
    try (TemporaryFolder folder = new TemporaryFolder()) {
      Path raw = folder.newFile("copy");
      try (OutputStream to = Files.newOutputStream(raw)) {
        document.write(to);
      }
      FixedZip.copy(raw, out, new PackageMark());
    }
  }

  /** Says of a signed document that the signature speaks for the original alone. */
  static void warnIfSigned(POIXMLDocument document, Job job) {
    boolean signed =
        document
            .getPackage()
            .getRelationshipsByType(PackageRelationshipTypes.DIGITAL_SIGNATURE_ORIGIN)
            .iterator()
            .hasNext();
    if (!signed) return;
    for (FindingNote note : job.notes()) {
      job.near(note, "the document is signed; the signature does not hold for the marked copy");
    }
  }
}
