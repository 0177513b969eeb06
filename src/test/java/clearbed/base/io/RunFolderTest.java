package clearbed.base.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RunFolderTest {
  @TempDir Path temporary;
  private String before;

  @BeforeEach
  void turn() {
    before = System.getProperty(RunFolder.TEMPORARY);
    System.setProperty(RunFolder.TEMPORARY, temporary.toString());
  }

  @AfterEach
  void turnBack() {
    System.setProperty(RunFolder.TEMPORARY, before);
  }

  @Test
  void a_run_has_one_folder_of_its_own_and_leaves_nothing() throws IOException {
    RunFolder run = RunFolder.begin();
    try {
      Path own = Path.of(System.getProperty(RunFolder.TEMPORARY));
      assertThat(own.getParent()).isEqualTo(temporary);
      if (own.getFileSystem().supportedFileAttributeViews().contains("posix"))
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(own)))
            .isEqualTo("rwx------");
      Files.createDirectories(own.resolve("library/deep"));
      assertThat(new TemporaryFolder().newFile("txt")).startsWith(own);
      Files.writeString(own.resolve("library/deep/rows.xml"), "x");
    } finally {
      run.close();
    }
    assertThat(temporary).isEmptyDirectory();
  }

  @Test
  void what_a_killed_run_left_goes_with_the_next_and_what_lives_stays() throws IOException {
    Path killed = Files.createDirectory(temporary.resolve(RunFolder.START + UUID.randomUUID()));
    Files.writeString(killed.resolve("rows.xml"), "x");
    Files.writeString(killed.resolve("lock"), "");
    Path torn = Files.createDirectory(temporary.resolve(RunFolder.START + UUID.randomUUID()));
    Path living = Files.createDirectory(temporary.resolve(RunFolder.START + UUID.randomUUID()));
    Path foreign = Files.createDirectory(temporary.resolve("clearbed-notes"));
    try (FileChannel lock =
        FileChannel.open(
            living.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      assertThat(lock.tryLock()).isNotNull();
      RunFolder.begin().close();
    }
    assertThat(killed).doesNotExist();
    assertThat(torn).doesNotExist();
    assertThat(living).exists();
    assertThat(foreign).exists();
  }

  @Test
  void a_link_that_somebody_planted_is_not_followed() throws IOException {
    Path elsewhere = Files.createDirectory(temporary.resolve("elsewhere"));
    Files.writeString(elsewhere.resolve("letter.txt"), "dear");
    Files.createSymbolicLink(temporary.resolve(RunFolder.START + UUID.randomUUID()), elsewhere);
    Path killed = Files.createDirectory(temporary.resolve(RunFolder.START + UUID.randomUUID()));
    Files.createSymbolicLink(killed.resolve("poifiles"), elsewhere);
    RunFolder.begin().close();
    assertThat(killed).doesNotExist();
    assertThat(elsewhere.resolve("letter.txt")).hasContent("dear");
  }

  @Test
  void where_no_folder_can_be_made_the_run_goes_on() {
    System.setProperty(RunFolder.TEMPORARY, temporary.resolve("gone").toString());
    RunFolder.begin().close();
    assertThat(System.getProperty(RunFolder.TEMPORARY))
        .isEqualTo(temporary + File.separator + "gone");
  }
}
