package clearbed.base.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AtomicFileTest {
  @TempDir Path folder;

  @Test
  void readers_see_the_old_file_until_the_new_one_is_whole() throws Exception {
    Path file = folder.resolve("a.txt");
    Files.writeString(file, "old");
    AtomicFile.write(
        file,
        out -> {
          out.write("new".getBytes());
          out.flush();
          assertThat(file).hasContent("old");
        });
    assertThat(file).hasContent("new");
    assertThat(folder).isDirectoryNotContaining(path -> !path.equals(file));
  }

  @Test
  void a_failure_half_way_leaves_the_old_file_and_nothing_else() throws Exception {
    Path file = folder.resolve("a.txt");
    Files.writeString(file, "old");
    assertThatThrownBy(
            () ->
                AtomicFile.write(
                    file,
                    out -> {
                      out.write(new byte[1 << 17]);
                      throw new IOException("the disk is full\nstack");
                    }))
        .isInstanceOf(IOException.class)
        .hasMessage("cannot write " + file + ": the disk is full");
    assertThat(file).hasContent("old");
    assertThat(folder).isDirectoryNotContaining(path -> !path.equals(file));
  }

  @Test
  void a_folder_is_not_a_file() {
    assertThatThrownBy(() -> AtomicFile.write(folder, out -> out.write(1)))
        .hasMessageContaining("it is a folder");
  }

  @Test
  void a_link_stays_a_link() throws Exception {
    Path file = Files.writeString(folder.resolve("a.txt"), "old");
    Path link = Files.createSymbolicLink(folder.resolve("link.txt"), file);
    AtomicFile.write(link, out -> out.write("new".getBytes()));
    assertThat(link).isSymbolicLink();
    assertThat(file).hasContent("new");
  }
}
