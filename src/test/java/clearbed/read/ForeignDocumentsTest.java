package clearbed.read;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.Document;
import clearbed.model.Document.Status;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.tika.parser.microsoft.OfficeParser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every office document that the authors of Tika test with: none made here, many of them broken.
 */
class ForeignDocumentsTest {
  @TempDir Path folder;

  @Test
  void everyFileGivesOneDocumentWithAStatusAndAReasonWhenItIsNotRead() throws IOException {
    int files = unpack();
    assertThat(files).isGreaterThan(200);

    ReadOptions options = ReadOptions.defaults().withDocumentTimeout(Duration.ofSeconds(30));
    List<Document> documents = ReadAll.by(options, folder);

    assertThat(documents.stream().map(Document::path).filter(p -> !p.contains("!/")).distinct())
        .hasSize(files);
    assertThat(documents)
        .filteredOn(d -> d.status() == Status.UNREADABLE || d.status() == Status.IGNORED)
        .allSatisfy(d -> assertThat(d.reason()).isNotBlank().doesNotContain("\n"));
    assertThat(documents)
        .filteredOn(d -> d.status() == Status.PARTLY)
        .allSatisfy(d -> assertThat(d.gaps()).isNotEmpty());
    // A reader that gave up on everything would pass the lines above.
    assertThat(documents).filteredOn(d -> !d.blocks().isEmpty()).hasSizeGreaterThan(120);
  }

  private int unpack() throws IOException {
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
        files++;
      }
    }
    return files;
  }

  private static java.net.URL jar() throws IOException {
    var known = OfficeParser.class.getClassLoader().getResource("test-documents/testWORD.docx");
    assertThat(known).as("a known document of the test jar").isNotNull();
    String spec = known.toString();
    return java.net.URI.create(spec.substring("jar:".length(), spec.indexOf("!/"))).toURL();
  }
}
