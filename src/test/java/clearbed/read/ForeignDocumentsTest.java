package clearbed.read;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.read.source.ReadOptions;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every office document that the authors of Tika test with: none made here, many of them broken.
 */
class ForeignDocumentsTest {
  @TempDir Path folder;

  @Test
  void everyFileGivesOneDocumentWithAStatusAndAReasonWhenItIsNotRead() throws IOException {
    int files = TikaDocuments.unpack(folder);
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
}
