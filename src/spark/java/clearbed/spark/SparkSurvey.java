package clearbed.spark;

import java.io.File;
import java.io.IOException;
import java.io.Serializable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.codec.digest.DigestUtils;
import org.apache.commons.io.FileUtils;
import org.apache.spark.SparkConf;
import org.apache.spark.SparkEnv;
import org.apache.spark.SparkFiles;
import org.apache.spark.TaskContext;
import org.apache.spark.api.java.JavaSparkContext;

/**
 * A survey on many machines: {@code SparkSurvey CLEARBED.zip ARCHIVE OUT [OPTIONS]}. Each project
 * is a task, which leaves its result in {@code OUT/projects}; the driver adds up what lies there.
 */
public final class SparkSurvey {
  private static final String UNPACKED = "clearbed";

  private SparkSurvey() {}

  public static void main(String[] words) throws Exception {
    if (words.length < 3) end("give CLEARBED.zip ARCHIVE OUT [OPTIONS]");
    List<String> options = new ArrayList<>(List.of(words).subList(3, words.length));
    Place archive = new Place(words[1]);
    Place out = new Place(words[2]);
    if (!options.remove("--overwrite") && (out.has("survey.xlsx") || out.has("tables")))
      end(words[2] + ": holds a survey already; add --overwrite or name another folder");
    if ((words[2] + "/").startsWith(words[1] + "/")) end(words[2] + ": lies within the archive");
    try (JavaSparkContext spark = new JavaSparkContext(new SparkConf().setAppName("Clearbed"))) {
      spark.sc().addArchive(new File(words[0]).getAbsoluteFile().toURI() + "#" + UNPACKED);
      // A rule file goes along to every machine, and is known there by its name.
      for (int i = 1; i < options.size(); i++)
        if (options.get(i - 1).equals("--rules")) {
          spark.addFile(options.get(i));
          options.set(i, new File(options.get(i)).getName());
        }
      System.out.print(run(spark, archive, out, List.copyOf(options)));
    } catch (IllegalArgumentException wrong) {
      end(wrong.getMessage());
    }
  }

  private static void end(String why) {
    System.err.println("clearbed: " + why);
    System.exit(2);
  }

  private static Program program(List<String> options) throws Exception {
    List<String> here = new ArrayList<>(options);
    for (int i = 1; i < here.size(); i++)
      if (here.get(i - 1).equals("--rules")) here.set(i, SparkFiles.get(here.get(i)));
    return Program.of(Path.of(SparkFiles.get(UNPACKED)), here);
  }

  private static String run(JavaSparkContext spark, Place archive, Place out, List<String> options)
      throws Exception {
    Program program = program(options);
    List<String> projects = program.projects(archive::names);
    if (projects.isEmpty()) throw new IllegalArgumentException(archive.uri() + ": no project");
    String rules = program.rules();
    int tries = spark.getConf().getInt("spark.task.maxFailures", 4);
    List<Done> done =
        spark
            .parallelize(projects, projects.size())
            .map(name -> one(name, archive, out, options, rules, tries))
            .collect();
    Path local = temporary();
    try {
      String name = new org.apache.hadoop.fs.Path(archive.uri()).getName();
      String summary = program.write(i -> out.read(done.get(i).result()), name, local);
      out.take(local);
      Map<String, Integer> counts = new TreeMap<>();
      for (Done each : done) counts.merge(each.known ? "known" : each.executor, 1, Integer::sum);
      return summary + "\nProjects by executor: " + counts + "\n";
    } finally {
      FileUtils.deleteQuietly(local.toFile());
    }
  }

  private record Done(String result, String executor, boolean known) implements Serializable {}

  /** One project, wherever this runs; asked again, it comes to the same file. */
  private static Done one(
      String name, Place archive, Place out, List<String> options, String rules, int tries)
      throws Exception {
    String executor = SparkEnv.get().executorId();
    // What brings its executor down again and again costs no more than its own line.
    int attempt = TaskContext.get().attemptNumber();
    boolean last = attempt > 0 && attempt + 1 >= tries;
    Program program = program(options);
    List<String> is = new ArrayList<>(List.of(name, rules));
    if (archive.has(name)) is.addAll(archive.files(name));
    String kept = "projects/" + DigestUtils.sha256Hex(String.join("\0", is));
    if (out.has(kept)) return new Done(kept, executor, true);
    String why = "given up after " + tries + " tries; check it by itself to see why";
    byte[] result = last ? program.notChecked(name, why) : checked(program, name, archive);
    // What was wanting to this run alone is looked for again by the next.
    String place = program.isLasting(result) ? kept : kept + "-" + SparkEnv.get().conf().getAppId();
    out.put(place, result, Long.toString(TaskContext.get().taskAttemptId()));
    return new Done(place, executor, false);
  }

  private static byte[] checked(Program program, String name, Place archive) throws Exception {
    Path local = temporary();
    try {
      return program.check(name, archive.fetch(name, local));
    } finally {
      FileUtils.deleteQuietly(local.toFile());
    }
  }

  /** In the private folder of the run, whatever Java started with. */
  private static Path temporary() throws IOException {
    return Files.createTempDirectory(Path.of(System.getProperty("java.io.tmpdir")), "survey");
  }
}
