package clearbed.spark;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.cli.Main;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A cluster of processes on this machine: a driver and three executors of one core each. */
class SparkSurveyTest {
  private static final Path TARGET = Path.of("target").toAbsolutePath();
  private static final List<String> TABLES =
      List.of(
          "projects.csv", "findings.csv", "entries.csv", "readings.csv", "about-these-tables.txt");
  private static final int PROJECTS = 36;

  /** What Spark asks of Java 17 (spark.apache.org, Java 17); its own launcher gives the same. */
  private static final List<String> OPENED =
      List.of(
          "java.base/java.lang",
          "java.base/java.lang.invoke",
          "java.base/java.lang.reflect",
          "java.base/java.io",
          "java.base/java.net",
          "java.base/java.nio",
          "java.base/java.util",
          "java.base/java.util.concurrent",
          "java.base/java.util.concurrent.atomic",
          "java.base/jdk.internal.ref",
          "java.base/sun.nio.ch",
          "java.base/sun.nio.cs",
          "java.base/sun.security.action",
          "java.base/sun.util.calendar");

  @TempDir Path folder;
  private Path archive;

  @BeforeEach
  void an_archive() throws IOException {
    archive = folder.resolve("archive");
    for (int i = 0; i < PROJECTS; i++) {
      Path project = Files.createDirectories(archive.resolve("office " + i % 3 + "/job " + i));
      copy(Path.of("sample-specs", i % 2 == 0 ? "draft" : "issued"), project);
      String row = "XT-" + i + ",Glass tile,wet,ANSI A118.15," + (300 + 10 * i) + " psi\n";
      Files.writeString(
          project.resolve("more.csv"), "Tag,Material,Exposure,Mortar,Bond strength\n" + row);
    }
    Path broken = Files.createDirectories(archive.resolve("office 0/broken"));
    Files.write(broken.resolve("schedule.xlsx"), "PK\3\4 cut".getBytes(StandardCharsets.UTF_8));
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.list(from)) {
      for (Path file : files.toList()) Files.copy(file, to.resolve(file.getFileName()));
    }
  }

  @Test
  void an_executor_that_is_killed_in_the_middle_loses_nothing_and_doubles_nothing()
      throws Exception {
    Path out = folder.resolve("out");
    Process driver = start(out);
    try {
      await(driver, () -> results(out) >= PROJECTS / 6);
      List<ProcessHandle> executors = executors(driver);
      assertThat(executors).hasSizeGreaterThan(1);
      assertThat(executors.get(0).destroyForcibly()).isTrue();
      int then = results(out);
      assertThat(then).as("killed in the middle").isLessThan(PROJECTS);
      assertThat(driver.waitFor(10, TimeUnit.MINUTES)).isTrue();
    } finally {
      driver.descendants().forEach(ProcessHandle::destroyForcibly);
      driver.destroyForcibly();
    }
    String log = Files.readString(folder.resolve("log"));
    assertThat(driver.exitValue()).as(log).isZero();
    assertThat(log).contains("Lost executor");
    // The place of the one that is gone was taken by a fourth.
    assertThat(byExecutor(Files.readString(folder.resolve("printed")))).hasSizeGreaterThan(2);

    Path local = folder.resolve("tables");
    int code =
        Main.run(
            "survey",
            archive.toString(),
            "-o",
            folder.resolve("s.xlsx").toString(),
            "--csv",
            local.toString(),
            "--levels",
            "office",
            "--quiet");
    assertThat(code).as("the broken file is said").isEqualTo(3);
    for (String table : TABLES)
      assertThat(out.resolve("tables").resolve(table)).hasSameBinaryContentAs(local.resolve(table));
    assertThat(Files.readAllLines(local.resolve("projects.csv"))).hasSize(PROJECTS + 2);
    assertThat(out.resolve("survey.xlsx")).isNotEmptyFile();
  }

  @Test
  void a_survey_that_is_there_is_not_replaced_unasked_and_what_is_known_is_not_checked_again()
      throws Exception {
    Path out = folder.resolve("out");
    assertThat(ended(start(out))).isZero();
    byte[] first = Files.readAllBytes(out.resolve("tables/findings.csv"));
    assertThat(ended(start(out))).isEqualTo(2);
    assertThat(Files.readString(folder.resolve("log"))).contains("--overwrite");
    assertThat(ended(start(out, "--overwrite"))).isZero();
    assertThat(Files.readAllBytes(out.resolve("tables/findings.csv"))).isEqualTo(first);
    // The one with a broken file is looked at again.
    assertThat(Files.readString(folder.resolve("printed"))).contains("known=" + PROJECTS);
  }

  private static int ended(Process driver) throws InterruptedException {
    try {
      assertThat(driver.waitFor(10, TimeUnit.MINUTES)).isTrue();
      return driver.exitValue();
    } finally {
      driver.descendants().forEach(ProcessHandle::destroyForcibly);
      driver.destroyForcibly();
    }
  }

  /** As {@code spark-submit} does. */
  private Process start(Path out, String... more) throws IOException {
    List<String> words = new ArrayList<>();
    words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    OPENED.forEach(name -> words.add("--add-opens=" + name + "=ALL-UNNAMED"));
    words.addAll(List.of("-Djava.io.tmpdir=" + Files.createDirectories(folder.resolve("tmp"))));
    words.addAll(List.of("-cp", TARGET.resolve("spark/home/jars/*").toString()));
    words.addAll(List.of("org.apache.spark.deploy.SparkSubmit"));
    words.addAll(List.of("--master", "local-cluster[3,1,1024]"));
    words.addAll(List.of("--conf", "spark.ui.enabled=false"));
    words.addAll(List.of("--class", "clearbed.spark.SparkSurvey"));
    words.add(TARGET.resolve("spark/clearbed-spark.jar").toString());
    words.add(TARGET.resolve("clearbed.zip").toString());
    words.addAll(List.of(archive.toUri().toString(), out.toUri().toString()));
    words.addAll(List.of("--levels", "office"));
    words.addAll(List.of(more));
    ProcessBuilder builder = new ProcessBuilder(words);
    builder.directory(Files.createDirectories(folder.resolve("driver")).toFile());
    builder.environment().put("SPARK_HOME", TARGET.resolve("spark/home").toString());
    builder.environment().put("SPARK_SCALA_VERSION", "2.13");
    builder.environment().put("SPARK_LOCAL_IP", "127.0.0.1");
    builder.redirectError(folder.resolve("log").toFile());
    builder.redirectOutput(folder.resolve("printed").toFile());
    return builder.start();
  }

  private interface Condition {
    boolean holds() throws IOException;
  }

  private static void await(Process driver, Condition condition) throws Exception {
    for (int i = 0; i < 6_000 && driver.isAlive(); i++) {
      if (condition.holds()) return;
      Thread.sleep(50);
    }
    throw new AssertionError("the survey ended, or nothing came of it, before that");
  }

  private static int results(Path out) throws IOException {
    Path results = out.resolve("projects");
    if (!Files.isDirectory(results)) return 0;
    try (Stream<Path> files = Files.list(results)) {
      return (int) files.filter(f -> !f.getFileName().toString().contains(".")).count();
    }
  }

  private static List<ProcessHandle> executors(Process driver) {
    return driver
        .descendants()
        .filter(
            process -> {
              Optional<String> command = process.info().commandLine();
              return command.orElse("").contains("CoarseGrainedExecutorBackend");
            })
        .toList();
  }

  private static List<String> byExecutor(String printed) {
    Matcher counts = Pattern.compile("Projects by executor: \\{(.*)}").matcher(printed);
    assertThat(counts.find()).as(printed).isTrue();
    return List.of(counts.group(1).split(", "));
  }
}
