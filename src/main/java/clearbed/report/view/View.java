package clearbed.report.view;

import clearbed.base.io.AtomicFile;
import clearbed.mark.ClosingLine;
import clearbed.mark.OutputKind;
import clearbed.mark.ViewWords;
import clearbed.model.document.Document;
import clearbed.model.report.Account;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.ProjectNames;
import clearbed.model.report.ReadingAccount;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.report.wording.Phrasing;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;

/**
 * One HTML page that needs nothing beside it: its policy (Content Security Policy Level 3) lets the
 * browser load nothing and run its own script alone, known by its digest.
 */
public final class View {
  private static final String TEMPLATE = "clearbed/page.jte";

  private final Report report;
  private final UnaryOperator<String> labels;
  private final Anchors anchors = new Anchors();

  private View(Report report, UnaryOperator<String> labels) {
    this.report = report;
    this.labels = labels;
  }

  /**
   * Writes the file whole or not at all.
   *
   * @param labels of attributes, by their ids
   * @throws IOException with one line that names the file and the reason
   */
  public static void write(
      Report report, Iterable<Viewed> documents, UnaryOperator<String> labels, Path file)
      throws IOException {
    byte[] text = text(report, documents, labels).getBytes(StandardCharsets.UTF_8);
    AtomicFile.write(file, out -> out.write(text));
  }

  /** The whole page. */
  public static String text(
      Report report, Iterable<Viewed> documents, UnaryOperator<String> labels) {
    Page page = new View(report, labels).page(documents);
    StringOutput out = new StringOutput(1 << 16);
    TemplateEngine.createPrecompiled(ContentType.Html).render(TEMPLATE, page, out);
    return ClosingLine.closedMarkup(out.toString(), OutputKind.VIEW);
  }

  private Page page(Iterable<Viewed> documents) {
    List<Finding> findings =
        report.findings().stream()
            .filter(f -> f.suppressed().isEmpty() && f.state() != State.RESOLVED)
            .toList();
    report.documents().forEach(d -> anchors.document(d.path()));
    wanted(findings);
    FindingPlaces places = new FindingPlaces(findings);
    Papers papers = new Papers(anchors, places);
    List<Page.ShownDocument> shown = new ArrayList<>();
    for (Viewed viewed : documents) shown.add(papers.of(viewed));
    // Only now it is known which places the page shows.
    List<Page.ShownFinding> notes = new ArrayList<>();
    for (Finding f : findings) notes.add(note(f, notes.size() + 1));
    String style = "<style>" + resource("page.css") + "</style>";
    String script = "<script>" + resource("page.js") + "</script>";
    return new Page(
        policy(),
        style,
        script,
        ViewWords.TITLE,
        ViewWords.DECIDES,
        facts(findings),
        levels(findings),
        tags(findings),
        List.copyOf(new TreeSet<>(findings.stream().map(Finding::check).toList())),
        notes,
        places.left(),
        unread(),
        report.entries().stream().filter(Entry::glass).map(this::tile).toList(),
        shown);
  }

  private void wanted(List<Finding> findings) {
    for (Finding f : findings) {
      anchors.wanted(f.origin());
      f.places().forEach(anchors::wanted);
    }
    report.reading().notUnderstood().forEach(n -> anchors.wanted(n.words().origin()));
    for (Entry entry : report.entries())
      if (entry.glass()) for (Value value : entry.values()) anchors.wanted(value.origin());
  }

  private Page.ShownFinding note(Finding f, int number) {
    List<Page.Fact> particulars = new ArrayList<>();
    add(particulars, "Found", f.found());
    add(particulars, "Wanted", f.expected());
    add(particulars, "Question", f.question());
    add(particulars, "Suggested clause", f.clause());
    add(particulars, "Working", String.join("\n", f.steps()));
    add(particulars, "Why it matters", f.why());
    add(particulars, "Source", f.source());
    String title =
        report.checks().stream()
            .filter(c -> c.id().equals(f.check()))
            .map(Report.CheckInfo::title)
            .findFirst()
            .orElse("");
    List<String> tags = f.tags().stream().map(Shown::line).toList();
    return new Page.ShownFinding(
        "f" + number,
        number,
        f.level().word(),
        f.check(),
        title,
        f.state() == State.NEW ? "" : f.state().word(),
        "|" + String.join("|", tags) + "|",
        tags,
        unnamed(tags, Shown.line(f.message())),
        Shown.line(f.message()),
        particulars,
        anchors.to(f.origin()),
        f.places().stream().map(anchors::to).distinct().toList());
  }

  /** The tags that a message does not name itself, or how many they are. */
  private static String unnamed(List<String> tags, String message) {
    if (tags.stream().anyMatch(message::contains)) return "";
    return tags.size() > 3 ? tags.size() + " tiles" : String.join(", ", tags);
  }

  private static void add(List<Page.Fact> particulars, String name, String text) {
    if (!text.isBlank()) particulars.add(new Page.Fact(name, Shown.text(text.strip())));
  }

  private List<Page.Fact> facts(List<Finding> findings) {
    List<Page.Fact> out = new ArrayList<>();
    Report.RunDetails run = report.run();
    ProjectNames names = run.names();
    if (!names.project().isEmpty()) out.add(new Page.Fact("Project", Shown.line(names.project())));
    if (!names.from().isEmpty()) out.add(new Page.Fact("From", Shown.line(names.from())));
    if (!names.to().isEmpty()) out.add(new Page.Fact("To", Shown.line(names.to())));
    out.add(new Page.Fact("Issue of", run.date()));
    String layers = run.layers().isEmpty() ? "" : ", with " + String.join(", ", run.layers());
    out.add(new Page.Fact("Rules", Shown.line(run.ruleSetWithReason() + layers)));
    long read =
        report.documents().stream()
            .filter(d -> d.status() == Document.Status.READ || d.status() == Document.Status.PARTLY)
            .count();
    out.add(new Page.Fact("Documents read", read + " of " + report.documents().size()));
    long glass = report.entries().stream().filter(Entry::glass).count();
    out.add(new Page.Fact("Glass tiles", String.valueOf(glass)));
    List<String> counts = new ArrayList<>();
    for (Level level : Level.values()) {
      int number = (int) findings.stream().filter(f -> f.level() == level).count();
      if (number > 0) counts.add(Phrasing.count(number, level.word()));
    }
    out.add(new Page.Fact("Findings", counts.isEmpty() ? "none" : String.join(", ", counts)));
    out.add(new Page.Fact("Sentences", Phrasing.of(report.reading().sentences())));
    out.add(new Page.Fact("Cells of schedules", Phrasing.of(report.reading().cells())));
    return out;
  }

  private static List<String> levels(List<Finding> findings) {
    Set<String> out = new LinkedHashSet<>();
    for (Level level : Level.values())
      if (findings.stream().anyMatch(f -> f.level() == level)) out.add(level.word());
    return List.copyOf(out);
  }

  private static List<String> tags(List<Finding> findings) {
    Set<String> out = new TreeSet<>();
    findings.forEach(f -> f.tags().forEach(tag -> out.add(Shown.line(tag))));
    return List.copyOf(out);
  }

  private List<Page.ShownUnread> unread() {
    List<Page.ShownUnread> out = new ArrayList<>();
    for (ReadingAccount.WordsNotUnderstood each : report.reading().notUnderstood()) {
      Account.Unread u = each.words();
      String samples = String.join(", ", u.samples().stream().map(s -> '"' + s + '"').toList());
      String words = samples.isEmpty() ? u.text() : "under \"" + u.text() + "\": " + samples;
      String could =
          each.couldAnswer().isEmpty()
              ? ""
              : "could answer " + String.join(", ", each.couldAnswer());
      out.add(new Page.ShownUnread(anchors.to(u.origin()), Shown.line(words), Shown.line(could)));
    }
    return out;
  }

  private Page.Tile tile(Entry entry) {
    List<Page.ShownValue> values = new ArrayList<>();
    for (Value v : entry.values()) {
      String not = v.excluded() ? "not " : v.open() ? "left open: " : "";
      values.add(
          new Page.ShownValue(
              labels.apply(v.attribute()),
              not + Shown.line(v.content().text()),
              v.scope().name().toLowerCase(Locale.ROOT),
              Shown.line(report.reading().taughtBy(v)),
              anchors.to(v.origin())));
    }
    return new Page.Tile(Shown.line(entry.tag()), Shown.line(entry.evidence()), values);
  }

  private static String policy() {
    return "default-src 'none'; style-src '"
        + digest("page.css")
        + "'; script-src '"
        + digest("page.js")
        + "'; base-uri 'none'; form-action 'none'";
  }

  private static String digest(String name) {
    try {
      byte[] text = resource(name).getBytes(StandardCharsets.UTF_8);
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(text);
      return "sha256-" + Base64.getEncoder().encodeToString(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static String resource(String name) {
    try (InputStream in = View.class.getResourceAsStream("/clearbed/view/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
