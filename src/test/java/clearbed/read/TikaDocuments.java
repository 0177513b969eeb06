package clearbed.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.tika.parser.microsoft.OfficeParser;

/** The office documents that the authors of Tika test with. */
public final class TikaDocuments {
  private static final int LARGEST = 3_000_000;

  private TikaDocuments() {}

  /** Writes them into the folder and tells how many there are. */
  public static int unpack(Path folder) throws IOException {
    int files = 0;
    try (InputStream in = jar().openStream();
        ZipInputStream zip = new ZipInputStream(in)) {
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        if (e.isDirectory() || !e.getName().startsWith("test-documents/")) continue;
        // Zip archives give a document for each entry, so they are tested elsewhere.
        if (e.getName().endsWith(".zip")) continue;
        Path file = folder.resolve(e.getName().substring("test-documents/".length()));
        Files.createDirectories(file.getParent());
        Files.copy(zip, file);
        // One that tries the limits of sizes takes minutes to be recognised.
        if (Files.size(file) > LARGEST) Files.delete(file);
        else files++;
      }
    }
    return files;
  }

  private static URL jar() throws IOException {
    URL known = OfficeParser.class.getClassLoader().getResource("test-documents/testWORD.docx");
    assertThat(known).as("a known document of the test jar").isNotNull();
    String spec = known.toString();
    return URI.create(spec.substring("jar:".length(), spec.indexOf("!/"))).toURL();
  }
}
