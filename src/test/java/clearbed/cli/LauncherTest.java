package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.condition.OS.LINUX;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.io.TempDir;

/** The start script, with a stand-in for Java that shows what it was given. */
@EnabledOnOs(LINUX)
class LauncherTest {
  @TempDir Path folder;
  Path home;
  Path java;

  @BeforeEach
  void unpack() throws IOException {
    home = Files.createDirectories(folder.resolve("a place of its own")).toRealPath();
    for (String script : List.of("clearbed", "clearbed-prepare")) {
      copy(Path.of("src/main/dist/bin", script), home.resolve("bin").resolve(script));
    }
    Files.createDirectories(home.resolve("lib"));
    // Makes the archive when it is asked for one, and shows its arguments otherwise.
    java = folder.resolve("jdk/bin/java");
    write(
        java,
        """
        #!/bin/sh
        for a in "$@"; do
          case $a in -XX:SharedArchiveFile=*) file=${a#-XX:SharedArchiveFile=} ;; esac
          if [ "$a" = -Xshare:dump ]; then echo archive >"$file"; exit 0; fi
        done
        for a in "$@"; do echo "[$a]"; done
        """);
  }

  @Test
  void a_fresh_place_starts_without_an_archive() throws Exception {
    assertThat(start(home.resolve("bin/clearbed"), "read", "two words"))
        .contains("[clearbed.cli.Main]", "[read]", "[two words]", "[-Dclearbed.home=" + home + "]")
        .noneMatch(argument -> argument.contains("SharedArchiveFile"));
  }

  @Test
  void a_prepared_place_starts_with_its_archive() throws Exception {
    prepare();
    assertThat(start(home.resolve("bin/clearbed"), "read")).contains(archiveOf(home));
  }

  @Test
  void it_starts_by_a_link_from_another_folder() throws Exception {
    prepare();
    Path link = Files.createSymbolicLink(folder.resolve("cb"), home.resolve("bin/clearbed"));
    assertThat(start(link, "read")).contains(archiveOf(home), "[read]");
  }

  @Test
  void a_moved_place_starts_without_until_it_is_prepared_anew() throws Exception {
    prepare();
    Path moved = Files.move(home, home.resolveSibling("moved"));
    home = moved;
    assertThat(start(moved.resolve("bin/clearbed"), "read"))
        .contains("[-Dclearbed.home=" + moved + "]")
        .noneMatch(argument -> argument.contains("SharedArchiveFile"));
    prepare();
    assertThat(start(moved.resolve("bin/clearbed"), "read")).contains(archiveOf(moved));
  }

  @Test
  void another_java_starts_without_the_archive() throws Exception {
    prepare();
    Path other = folder.resolve("jdk-next/bin/java");
    copy(java, other);
    java = other;
    assertThat(start(home.resolve("bin/clearbed"), "read"))
        .noneMatch(argument -> argument.contains("SharedArchiveFile"));
  }

  @Test
  void half_an_archive_is_left_aside() throws Exception {
    prepare();
    Files.writeString(home.resolve("lib/clearbed.jsa"), "arch");
    assertThat(start(home.resolve("bin/clearbed"), "read"))
        .noneMatch(argument -> argument.contains("SharedArchiveFile"));
  }

  @Test
  void a_java_that_makes_no_archive_leaves_none() throws Exception {
    write(java, "#!/bin/sh\nexit 1\n");
    assertThat(run(home.resolve("bin/clearbed-prepare")).exitValue()).isEqualTo(3);
    assertThat(home.resolve("lib")).isEmptyDirectory();
  }

  private String archiveOf(Path place) {
    return "[-XX:SharedArchiveFile=" + place.resolve("lib/clearbed.jsa") + "]";
  }

  private void prepare() throws Exception {
    assertThat(run(home.resolve("bin/clearbed-prepare")).exitValue()).isZero();
  }

  private List<String> start(Path script, String... arguments) throws Exception {
    Process process = run(script, arguments);
    assertThat(process.exitValue()).isZero();
    return process.inputReader().lines().toList();
  }

  private Process run(Path script, String... arguments) throws Exception {
    List<String> command = new java.util.ArrayList<>(List.of(script.toString()));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
    builder.environment().put("JAVA_HOME", java.getParent().getParent().toString());
    builder.environment().remove("CLEARBED_JAVA_OPTS");
    Process process = builder.redirectErrorStream(true).start();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return process;
  }

  private static void write(Path script, String text) throws IOException {
    Files.createDirectories(script.getParent());
    Files.writeString(script, text);
    assertThat(script.toFile().setExecutable(true)).isTrue();
  }

  private static void copy(Path from, Path to) throws IOException {
    Files.createDirectories(to.getParent());
    Files.copy(from, to, StandardCopyOption.REPLACE_EXISTING);
    assertThat(to.toFile().setExecutable(true)).isTrue();
  }
}
