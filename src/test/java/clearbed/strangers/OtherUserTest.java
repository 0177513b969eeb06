package clearbed.strangers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Two users share a temporary folder: neither stands in the other's way, and what one leaves or
 * plants there leads the other nowhere. Needs root and {@code setpriv} (util-linux).
 */
class OtherUserTest {
  /**
   * Root's run, and that of the user nobody, who may read everything as the test's classes are
   * root's.
   */
  private static final Map<String, List<String>> USERS =
      Map.of(
          "root",
          List.of(),
          "nobody",
          List.of(
              "setpriv",
              "--reuid=65534",
              "--regid=65534",
              "--clear-groups",
              "--inh-caps=+dac_read_search",
              "--ambient-caps=+dac_read_search"));

  /** Names that runs and libraries have given, and give, to temporary folders and files. */
  private static final List<String> NAMES =
      List.of("poifiles", "clearbed", "clearbed-run", "clearbed-run-1", "clearbed-cache", "sxssf");

  @TempDir Path folder;
  private Path temporary;
  private Path documents;

  @BeforeEach
  void a_temporary_folder_for_all_and_a_long_schedule() throws Exception {
    assumeTrue(System.getProperty("user.name").equals("root"), "needs root");
    assumeTrue(can("nobody"), "needs setpriv");
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
    temporary = Files.createDirectory(folder.resolve("tmp"));
    Files.setPosixFilePermissions(temporary, PosixFilePermissions.fromString("rwxrwxrwx"));
    documents = Files.createDirectory(folder.resolve("documents"));
    // So long that the library that writes workbooks puts rows aside.
    StringBuilder rows = new StringBuilder("Tag,Material,Mortar,Joint,Grout\n");
    for (int i = 0; i < 700; i++) rows.append("GT-" + i + ",Glass tile,ANSI A118.15,3 mm,TBD\n");
    Files.writeString(documents.resolve("long.csv"), rows);
    Files.writeString(documents.resolve("deep.md"), "> ".repeat(200_000) + "drain");
  }

  private static boolean can(String user) throws InterruptedException {
    try {
      List<String> words = new ArrayList<>(USERS.get(user));
      words.add("true");
      return new ProcessBuilder(words).start().waitFor() == 0;
    } catch (IOException none) {
      return false;
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"root", "nobody"})
  void a_run_of_one_user_is_not_hindered_by_what_another_has_left(String second) throws Exception {
    String first = second.equals("root") ? "nobody" : "root";
    assertWhole(first, run(first, "first"));
    killed(first);
    Map<String, String> left = files();

    assertWhole(second, run(second, "second"));

    assertThat(files()).as("what the first user left is none of the second's").isEqualTo(left);
    assertWhole(first, run(first, "third"));
    assertThat(temporary).as("the first user's next run removes it").isEmptyDirectory();
  }

  @ParameterizedTest
  @ValueSource(strings = {"root", "nobody"})
  void links_and_folders_that_another_user_has_planted_lead_nowhere(String victim)
      throws Exception {
    String planter = victim.equals("root") ? "nobody" : "root";
    Path theirs = own(victim, Files.createDirectory(folder.resolve("theirs")));
    Path kept = own(victim, Files.writeString(theirs.resolve("kept.txt"), "kept"));
    for (String name : NAMES) {
      plant(planter, "ln", "-s", theirs.toString(), temporary.resolve(name).toString());
      String beside = name + "-own";
      plant(planter, "mkdir", "-m", "777", temporary.resolve(beside).toString());
      plant(planter, "ln", "-s", kept.toString(), temporary.resolve(beside + "/lock").toString());
    }
    Map<String, String> planted = files();

    assertWhole(victim, run(victim, "victim"));

    assertThat(files()).as("nothing written, nothing removed").isEqualTo(planted);
    assertThat(theirs.toFile().list()).containsExactly("kept.txt");
    assertThat(kept).hasContent("kept");
  }

  @Test
  void nobody_but_its_owner_can_enter_the_folder_of_a_run() throws Exception {
    Process running = start("root", "watched");
    Path own = null;
    for (int i = 0; i < 600 && own == null && running.isAlive(); i++) {
      TimeUnit.MILLISECONDS.sleep(20);
      try (Stream<Path> all = Files.list(temporary)) {
        own = all.findFirst().orElse(null);
      }
    }
    assertThat(own).as("the folder of the run").isNotNull();
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(own)))
        .isEqualTo("rwx------");
    assertThat(running.waitFor()).isBetween(1, 3);
  }

  private void assertWhole(String user, String printed) throws IOException {
    assertThat(printed).as(user).doesNotContain("not written").doesNotContain("Exception");
    Path book = folder.resolve("out-" + user).resolve("findings.xlsx");
    assertThat(book).as(printed).exists();
    assertThat(Files.size(book)).isGreaterThan(100_000);
    assertThat(Files.getOwner(book).getName()).isEqualTo(user);
    Files.delete(book);
  }

  private String run(String user, String name) throws Exception {
    Process process = start(user, name);
    assertThat(process.waitFor(180, TimeUnit.SECONDS)).isTrue();
    String printed = Files.readString(folder.resolve(name), StandardCharsets.UTF_8);
    // One document is beyond every limit, and has findings beside it.
    assertThat(process.exitValue()).as(printed).isBetween(0, 3);
    return printed;
  }

  /** Leaves a folder with something in it. */
  private void killed(String user) throws Exception {
    Process process = start(user, "killed");
    for (int i = 0; i < 600 && files().size() < 2 && process.isAlive(); i++)
      TimeUnit.MILLISECONDS.sleep(20);
    process.destroyForcibly().waitFor();
    for (int i = 0; i < 100 && process.descendants().findAny().isPresent(); i++)
      TimeUnit.MILLISECONDS.sleep(100);
  }

  private Process start(String user, String name) throws Exception {
    Path out = folder.resolve("out-" + user);
    if (!Files.exists(out)) own(user, Files.createDirectory(out));
    List<String> words = new ArrayList<>(USERS.get(user));
    words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    words.addAll(List.of("-Xmx512m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1"));
    words.addAll(List.of("-XX:-UsePerfData", "-Djava.io.tmpdir=" + temporary));
    words.addAll(List.of("-cp", System.getProperty("java.class.path"), "clearbed.cli.Main"));
    words.addAll(List.of("check", documents.toString(), "--quiet"));
    words.addAll(List.of("-o", out.resolve("findings.xlsx").toString()));
    return new ProcessBuilder(words)
        .directory(folder.toFile())
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve(name).toFile())
        .start();
  }

  private static void plant(String user, String... command) throws Exception {
    List<String> words = new ArrayList<>(USERS.get(user));
    words.addAll(List.of(command));
    assertThat(new ProcessBuilder(words).inheritIO().start().waitFor()).isZero();
  }

  private static Path own(String user, Path file) throws IOException {
    var users = file.getFileSystem().getUserPrincipalLookupService();
    return Files.setOwner(file, users.lookupPrincipalByName(user));
  }

  /** What lies in the temporary folder: its owner, and where a link leads or what a file holds. */
  private Map<String, String> files() throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(temporary)) {
      for (Path file : all.skip(1).toList()) {
        String owner = Files.getOwner(file, LinkOption.NOFOLLOW_LINKS).getName();
        String what = Files.isSymbolicLink(file) ? " to " + Files.readSymbolicLink(file) : "";
        files.put(temporary.relativize(file).toString(), owner + what);
      }
    } catch (java.io.UncheckedIOException changing) {
      // A run that goes on removes what was listed.
    }
    return files;
  }
}
