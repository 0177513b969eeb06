package clearbed.cli;

import clearbed.cache.Cache;
import clearbed.model.Document;
import clearbed.model.Entry;
import clearbed.model.OneLine;
import clearbed.model.Report;
import clearbed.model.Value;
import clearbed.read.ReadOptions;
import clearbed.recognise.Vocabulary;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
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
    new Outputs(false).documents(paths).fills("--cache", cacheOption.folder).requireFree();
    Rulebook.Coming rulebook = new Rulebook.Coming(ruleOptions);
    Cache cache = cacheOption.open();
    ReadOptions options = ReadOptions.defaults().withOwnOutputs(cacheOption.written());
    Understanding understanding =
        Reading.of(paths, options, rulebook, cache, path -> {}).understood();
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

  private static void document(PrintWriter out, Report.DocumentSummary d) {
    String entries =
        d.status() == Document.Status.READ || d.status() == Document.Status.PARTLY
            ? ", " + d.glassEntries() + " glass, " + d.otherEntries() + " other"
            : "";
    out.println(
        "  "
            + OneLine.path(d.path())
            + " ("
            + d.format()
            + "): "
            + d.status().name().toLowerCase(Locale.ROOT)
            + (d.reason().isEmpty() ? "" : ": " + OneLine.of(d.reason()))
            + entries);
    for (Document.Gap gap : d.skipped())
      out.println("    not read: " + gap.origin().place() + ": " + OneLine.of(gap.reason()));
  }

  private static void entry(PrintWriter out, Vocabulary vocabulary, Entry entry) {
    out.println();
    out.println(
        OneLine.of(entry.tag())
            + (entry.glass() ? "  glass tile" : "  not glass tile")
            + "  ("
            + entry.origin().place()
            + ")");
    if (!entry.glass()) {
      out.println("  because of: " + OneLine.of(entry.evidence()));
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
              + OneLine.of(v.content().text())
              + "  ["
              + v.scope().name().toLowerCase(Locale.ROOT)
              + "; "
              + v.origin().place()
              + "]");
    }
  }
}
