package clearbed.read;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A byte that changed on the way is no word of the document. */
class ChecksumsTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "docx, word/document.xml",
    "xlsx, xl/",
    "odt, content.xml",
    "ods, content.xml",
    "zip, in the archive"
  })
  void aChangedByteIsDamageAndNoOtherWord(String format, String part) throws IOException {
    byte[] sound = unpacked(FaultCorpus.sound().get(format));
    assertThat(read(format, sound).status()).isEqualTo(Status.READ);

    Document damaged = read(format, changed(sound));
    assertThat(damaged.status()).isEqualTo(Status.UNREADABLE);
    assertThat(damaged.reason()).contains("damaged").contains("checksum").contains(part);
  }

  private Document read(String format, byte[] bytes) throws IOException {
    Path file = folder.resolve("drains." + format);
    Files.write(file, bytes);
    return ReadAll.of(file).get(0);
  }

  /** The same parts, none of them compressed, so that a word can be changed where it stands. */
  private static byte[] unpacked(byte[] zip) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipInputStream from = new ZipInputStream(new ByteArrayInputStream(zip));
        ZipOutputStream to = new ZipOutputStream(out)) {
      to.setMethod(ZipOutputStream.STORED);
      for (ZipEntry part = from.getNextEntry(); part != null; part = from.getNextEntry()) {
        byte[] bytes = from.readAllBytes();
        CRC32 sum = new CRC32();
        sum.update(bytes);
        ZipEntry stored = new ZipEntry(part.getName());
        stored.setSize(bytes.length);
        stored.setCrc(sum.getValue());
        to.putNextEntry(stored);
        to.write(bytes);
      }
    }
    return out.toByteArray();
  }

  private static byte[] changed(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    assertThat(text).containsPattern("pipe|Gutter");
    return text.replace("pipe", "pope")
        .replace("Gutter", "Batter")
        .getBytes(StandardCharsets.ISO_8859_1);
  }
}
