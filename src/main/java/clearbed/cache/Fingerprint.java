package clearbed.cache;

import clearbed.base.config.StandardFiles;
import clearbed.recognise.vocabulary.Vocabulary;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/**
 * Digests, SHA-256: of a file, and of all that decides what is understood of one (this program, its
 * vocabulary, the Java it runs on).
 */
final class Fingerprint {
  private final MessageDigest digest;

  private Fingerprint() {
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Of this program, as it is, with the vocabulary beside it. */
  static String ofProgram() throws IOException {
    Fingerprint out = new Fingerprint();
    out.add(System.getProperty("java.version"));
    for (String file : Vocabulary.FILES) out.add(StandardFiles.open(file).bytes());
    for (Path file : program()) out.add(Files.readAllBytes(file));
    return out.hex();
  }

  /** The jar, which names the versions of the libraries too; or the classes where there is none. */
  private static List<Path> program() throws IOException {
    try {
      Path place =
          Path.of(Fingerprint.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      try (Stream<Path> files = Files.walk(place)) {
        return files.filter(Files::isRegularFile).sorted().toList();
      }
    } catch (URISyntaxException e) {
      throw new IOException(e);
    }
  }

  /** Of a file's bytes and what else decides how it is read. */
  static String of(Path file, String... more) throws IOException {
    Fingerprint out = new Fingerprint();
    for (String word : more) out.add(word);
    try (var in = Files.newInputStream(file)) {
      byte[] part = new byte[1 << 16];
      for (int n = in.read(part); n >= 0; n = in.read(part)) out.digest.update(part, 0, n);
    }
    return out.hex();
  }

  /** Of words alone, in order. */
  static String of(List<String> words) {
    Fingerprint out = new Fingerprint();
    for (String word : words) out.add(word);
    return out.hex();
  }

  private void add(String word) {
    add(word.getBytes(StandardCharsets.UTF_8));
  }

  /** With its length, so that no two lists of parts run together into the same bytes. */
  private void add(byte[] bytes) {
    digest.update(Integer.toString(bytes.length).getBytes(StandardCharsets.UTF_8));
    digest.update((byte) ':');
    digest.update(bytes);
  }

  private String hex() {
    return HexFormat.of().formatHex(digest.digest());
  }
}
