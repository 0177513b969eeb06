package clearbed.corpus;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A rule layer that switches one check off, made from {@code corpus/without.yaml}. */
final class SwitchedOff {
  private SwitchedOff() {}

  /** Writes the layer to a temporary file, which the caller deletes. */
  static Path layer(String check) throws IOException {
    try (InputStream in = SwitchedOff.class.getResourceAsStream("/corpus/without.yaml")) {
      String template = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      Path file = Files.createTempFile("without-" + check, ".yaml");
      return Files.writeString(file, template.replace("CHECK", check));
    }
  }
}
