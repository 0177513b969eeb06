package clearbed.cli;

import clearbed.base.DisplayText;
import clearbed.base.config.Spelling;
import clearbed.cache.Cache;
import clearbed.cli.option.CacheOption;
import clearbed.cli.option.ComingRulebook;
import clearbed.cli.option.LimitOptions;
import clearbed.cli.option.RuleOptions;
import clearbed.cli.output.Outputs;
import clearbed.cli.terminal.ExitCode;
import clearbed.cli.terminal.Progress;
import clearbed.cli.terminal.Terminal;
import clearbed.cli.terminal.UsageFailure;
import clearbed.cli.terminal.Version;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.report.Report;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.project.Summaries;
import clearbed.read.source.ReadOptions;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.report.LeftOut;
import clearbed.report.teach.TeachingLayer;
import clearbed.report.wording.Phrasing;
import clearbed.resolve.Project;
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
        "Show what was understood of each tile, and where it stands; what was not read, and why.")
final class ReadCommand implements Callable<Integer> {
  private static final int LONGEST_WORDS = 100;

  @Spec CommandSpec spec;

  @Parameters(arity = "1..*", paramLabel = "PATH", description = "Documents, folders or zip files.")
  List<Path> paths;

  @Option(names = "--tag", paramLabel = "TAG", description = "Only the tile with this tag.")
  String tag;

  @Option(
      names = "--teach",
      paramLabel = "FILE.yaml",
      description =
          "Adds to this layer a line for everything not understood, to be confirmed by hand.")
  Path teach;

  @Mixin RuleOptions ruleOptions;

  @Mixin CacheOption cacheOption;

  @Mixin LimitOptions limits;

  @Override
  public Integer call() {
    Outputs outputs =
        new Outputs(false)
            .documents(paths)
            .fills("--cache", cacheOption.folder)
            .addsTo("--teach", teach);
    limits.requireSense();
    outputs.requireFree();
    ComingRulebook rulebook = new ComingRulebook(ruleOptions);
    Cache cache = cacheOption.open(rulebook);
    ReadOptions options = limits.in(ReadOptions.defaults().withOwnOutputs(cacheOption.written()));
    Project project = new Documents(paths, options, cache).project(rulebook, Progress.on(false));
    List<Report.DocumentSummary> documents = Summaries.of(project);
    cacheOption.close(cache, spec.commandLine().getErr());
    requireTag(project);
    Vocabulary vocabulary = rulebook.get().vocabulary();
    PrintWriter out = spec.commandLine().getOut();
    WhatWasRead read = new WhatWasRead(project, documents);
    read.printCounts(out);
    out.println();
    out.println("Documents");
    documents.forEach(d -> document(out, d));
    LeftOut.lines(documents, "see above", Terminal.width()).forEach(out::println);
    if (project.glass().isEmpty()) noEntry(out, project);
    read.printTaught(out, vocabulary.taught().forReaders());
    for (Entry entry : project.entries()) {
      if (tag == null || tag.equalsIgnoreCase(entry.tag())) entry(out, vocabulary, entry);
    }
    read.printNotUnderstood(out, tag);
    boolean taught = teach == null || teach(outputs, project, vocabulary);
    out.flush();
    limits.tellWaits(spec.commandLine().getErr());
    boolean unreadable = documents.stream().anyMatch(d -> d.status() == Document.Status.UNREADABLE);
    return unreadable || !taught ? ExitCode.FAULT : ExitCode.CLEAN;
  }

  /** What is not understood for a tag that nobody wrote would pass for what is known of it. */
  private void requireTag(Project project) {
    if (tag == null) return;
    List<String> tags = project.entries().stream().map(Entry::tag).toList();
    if (tags.stream().anyMatch(tag::equalsIgnoreCase)) return;
    String near = Spelling.nearest(tag, tags);
    throw new UsageFailure(
        "--tag "
            + DisplayText.of(tag)
            + ": these documents have no such entry"
            + (near.isEmpty() ? "" : "; did you mean '" + DisplayText.of(near) + "'?")
            + " (clearbed read without --tag shows all)");
  }

  private boolean teach(Outputs outputs, Project project, Vocabulary vocabulary) {
    return outputs.write(
        teach,
        spec.commandLine().getErr(),
        () -> taught(TeachingLayer.write(teach, project.facts(), vocabulary)));
  }

  private void taught(int lines) {
    PrintWriter out = spec.commandLine().getOut();
    String file = DisplayText.path(teach.toString());
    out.println();
    out.println(
        lines == 0
            ? "Nothing to add to " + file + "."
            : file
                + ": "
                + Phrasing.count(lines, "line")
                + " added; put the guesses right, take the # from before those that hold, and give"
                + " the file to check with --rules.");
  }

  private static void noEntry(PrintWriter out, Project project) {
    List<Origin> named = project.facts().stream().flatMap(f -> f.glassNamed().stream()).toList();
    out.println();
    out.println(
        named.isEmpty()
            ? "No glass tile is named in these documents."
            : "Glass tile is named, and no entry could be made of it:");
    for (Origin place : named)
      out.println("  " + DisplayText.of(place.place()) + ": " + DisplayText.of(place.text()));
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
      out.println("    " + fate(gap) + ": " + gap.origin().place() + ": " + words(gap));
  }

  private static String fate(Document.Gap gap) {
    return switch (gap.fate()) {
      case UNREAD -> "not read";
      case NOT_IN_FORCE -> "not in force";
      case PASSED_OVER -> "passed over";
      case READ -> "note";
    };
  }

  /** The reason, and the words where they are known and no longer than a line. */
  private static String words(Document.Gap gap) {
    String reason = DisplayText.of(gap.reason());
    if (gap.origin().text() == null) return reason;
    String words = DisplayText.of(gap.origin().text());
    boolean isLong = words.length() > LONGEST_WORDS;
    return reason + ": \"" + (isLong ? words.substring(0, LONGEST_WORDS) + "\u2026" : words) + "\"";
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
    for (Value v : entry.values()) value(out, vocabulary, v, "");
    for (Value v : entry.superseded()) value(out, vocabulary, v, "superseded: ");
  }

  private static String taught(Vocabulary vocabulary, Value v) {
    return vocabulary.taught().forReaders().stream()
        .filter(word -> word.marks(v))
        .map(word -> "; taught: " + word.source())
        .findFirst()
        .orElse("");
  }

  private static void value(PrintWriter out, Vocabulary vocabulary, Value v, String standing) {
    String not = v.excluded() ? "not " : "";
    String open = v.open() ? "left open: " : "";
    out.println(
        "  "
            + standing
            + vocabulary.label(v.attribute())
            + ": "
            + not
            + open
            + DisplayText.of(v.content().text())
            + "  ["
            + v.scope().name().toLowerCase(Locale.ROOT)
            + "; "
            + v.origin().place()
            + taught(vocabulary, v)
            + "]");
  }
}
