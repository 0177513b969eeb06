package clearbed.cli;

import clearbed.base.DisplayText;
import clearbed.cache.Cache;
import clearbed.model.Document;
import clearbed.model.Entry;
import clearbed.model.Report;
import clearbed.model.Value;
import clearbed.read.ReadOptions;
import clearbed.recognise.Vocabulary;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Shows what was understood. */
@Command(
    name = "read",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description =
        "Show what was understood: entries, values, where each came from; what was not read and why.")
final class ReadCommand implements Callable<Integer> {
  @Spec CommandSpec spec;

  @Parameters(arity = "1..*", paramLabel = "PATH", description = "Documents, folders or zip files.")
  List<Path> paths;

  @Option(names = "--tag", paramLabel = "TAG", description = "Only this entry.")
  String tag;

  @Mixin RuleOptions ruleOptions;

  @Mixin CacheOption cacheOption;

  @Override
  public Integer call() {
    Rulebook.Coming rulebook = new Rulebook.Coming(ruleOptions);
    Cache cache = cacheOption.open();
    Understanding understanding =
        Reading.of(paths, options(), rulebook, cache, path -> {}).understood();
    cacheOption.close(cache, spec.commandLine().getErr());
    Vocabulary vocabulary = rulebook.get().vocabulary();
    PrintWriter out = spec.commandLine().getOut();
    out.println("Documents");
    understanding.summaries().forEach(d -> document(out, d));
    for (Entry entry : understanding.project().entries()) {
      if (tag == null || tag.equalsIgnoreCase(entry.tag())) entry(out, vocabulary, entry);
    }
    out.flush();
    return understanding.anyUnreadable() ? ExitCode.FAULT : ExitCode.CLEAN;
  }

  private ReadOptions options() {
    ReadOptions options = ReadOptions.defaults();
    Path cache = cacheOption.folder;
    return cache == null
        ? options
        : options.withOwnOutputs(Set.of(cache.toAbsolutePath().normalize()));
  }

  private static void document(PrintWriter out, Report.DocumentSummary d) {
    String entries =
        d.status() == Document.Status.READ || d.status() == Document.Status.PARTLY
            ? ", " + d.glassEntries() + " glass, " + d.otherEntries() + " other"
            : "";
    out.println(
        "  "
            + DisplayText.path(d.path())
            + " ("
            + d.format()
            + "): "
            + d.status().name().toLowerCase(Locale.ROOT)
            + (d.reason().isEmpty() ? "" : ": " + DisplayText.of(d.reason()))
            + entries);
    for (Document.Gap gap : d.skipped())
      out.println("    not read: " + gap.origin().place() + ": " + DisplayText.of(gap.reason()));
  }

  private static void entry(PrintWriter out, Vocabulary vocabulary, Entry entry) {
    out.println();
    out.println(
        DisplayText.of(entry.tag())
            + (entry.glass() ? "  glass tile" : "  not glass tile")
            + "  ("
            + entry.origin().place()
            + ")");
    if (!entry.glass()) {
      out.println("  because of: " + DisplayText.of(entry.evidence()));
      return;
    }
    for (Value v : entry.values()) {
      String not = v.excluded() ? "not " : "";
      String open = v.open() ? "left open: " : "";
      out.println(
          "  "
              + vocabulary.label(v.attribute())
              + ": "
              + not
              + open
              + DisplayText.of(v.content().text())
              + "  ["
              + v.scope().name().toLowerCase(Locale.ROOT)
              + "; "
              + v.origin().place()
              + "]");
    }
  }
}
