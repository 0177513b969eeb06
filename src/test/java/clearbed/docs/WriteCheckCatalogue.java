package clearbed.docs;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes the page of the checks anew, from the root of the repository. */
final class WriteCheckCatalogue {
  static final Path PAGE = Path.of("src", "site", "checks.md");

  private WriteCheckCatalogue() {}

  public static void main(String[] arguments) throws Exception {
    byte[] page = CheckCatalogue.ofTheRuleSets().markdown().getBytes(StandardCharsets.UTF_8);
    Files.createDirectories(PAGE.getParent());
    Files.write(PAGE, page);
  }
}
