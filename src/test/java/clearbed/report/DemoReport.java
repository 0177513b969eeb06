package clearbed.report;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.report.Account;
import clearbed.model.report.Calculation;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.report.ProjectNames;
import clearbed.model.report.ReadingAccount;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.model.report.Verdict;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Scope;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** Eight glass entries of an invented bath house, with some two dozen findings. */
public final class DemoReport {
  public static final String SCHEDULE = "Moorhen Baths/finish schedule.xlsx";
  public static final String SPEC = "Moorhen Baths/09 30 13 tiling.docx";
  private static final List<String> TAGS =
      List.of("GT-1", "GT-2", "GT-3", "GT-4", "GT-5", "GT-6", "GT-7", "GT-8");

  private static final Map<String, String> CHECKS = checks();

  private DemoReport() {}

  /** The same with an account of reading and what became of two checks of the whole set. */
  public static Report withReading() {
    Report demo = report();
    ReadingAccount reading =
        new ReadingAccount(
            new Account.Tally(300, 112, 40, 18),
            new Account.Tally(90, 6, 0, 8),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(
                new ReadingAccount.WholeSet("mortar-class", Verdict.Outcome.SATISFIED, 0, 0),
                new ReadingAccount.WholeSet("mockup", Verdict.Outcome.UNREAD, 0, 2)),
            List.of());
    return new Report(
        demo.run(),
        demo.documents(),
        demo.entries(),
        demo.findings(),
        demo.verdicts(),
        demo.calculations(),
        demo.checks(),
        reading);
  }

  public static Report report() {
    return report("2026-03-02", finding -> true);
  }

  public static Report report(String date, Predicate<Finding> still) {
    return new Report(
        run(date),
        documents(),
        entries(),
        findings().stream().filter(still).toList(),
        verdicts(),
        List.of(calculation("GT-3"), calculation("GT-5")),
        CHECKS.entrySet().stream()
            .map(
                check ->
                    new Report.CheckInfo(
                        check.getKey(),
                        check.getValue(),
                        attribute(check.getKey()),
                        Level.ERROR,
                        "common practice, no source",
                        true))
            .toList());
  }

  private static Report.RunDetails run(String date) {
    return new Report.RunDetails(
        "clearbed",
        "0.1.0",
        "north-america",
        "sha256:5d41402abc4b2a76b9719d911017c592",
        date + "T08:15:00Z",
        date,
        List.of("moorhen.yaml"),
        List.of("Facade tile sees -20 to 60 °C (moorhen.yaml)", "Room 104 is a steam room"),
        "",
        ProjectNames.NONE,
        List.of(),
        List.of(),
        Report.Waited.NEVER);
  }

  private static List<Report.DocumentSummary> documents() {
    Origin gap = Origin.ofCell(SCHEDULE, "Tile", "A19", "see drawing");
    return List.of(
        new Report.DocumentSummary(
            SCHEDULE,
            "xlsx",
            Document.Status.PARTLY,
            "",
            8,
            11,
            List.of(new Document.Gap(gap, "the row has no tag, it cannot be told what it is"))),
        new Report.DocumentSummary(SPEC, "docx", Document.Status.READ, "", 0, 0, List.of()),
        new Report.DocumentSummary(
            "Moorhen Baths/details.pdf",
            "pdf",
            Document.Status.UNREADABLE,
            "pages 1 to 4 are pictures without text; run them through text recognition first",
            0,
            0,
            List.of()),
        new Report.DocumentSummary(
            "Moorhen Baths/logo.png",
            "png",
            Document.Status.IGNORED,
            "a picture",
            0,
            0,
            List.of()));
  }

  private static List<Entry> entries() {
    List<Entry> entries = new ArrayList<>();
    for (String tag : TAGS) {
      Origin origin = cell("A", tag);
      Value value =
          new Value(
              "mortar.standard",
              new Content.Standard("ANSI A118.4", ""),
              false,
              "latex portland cement mortar, A118.4",
              cell("F", "latex portland cement mortar, A118.4"),
              Scope.ENTRY);
      entries.add(
          new Entry(
              tag, true, "\"glass mosaic\" in its row", origin, List.of(origin), List.of(value)));
    }
    Origin origin = cell("A", "CT-1");
    entries.add(new Entry("CT-1", false, "\"porcelain\"", origin, List.of(origin), List.of()));
    return entries;
  }

  private static Origin cell(String column, String text) {
    int row = 7 + Math.abs(text.hashCode() % 8);
    return Origin.ofCell(SCHEDULE, "Tile", column + row, text);
  }

  public static List<Finding> findings() {
    List<Finding> findings = new ArrayList<>();
    for (String tag : TAGS) {
      findings.add(
          missing("bond-strength", tag, Level.ERROR, "a shear bond strength above 400 psi"));
    }
    for (String tag : TAGS.subList(0, 5)) {
      findings.add(missing("joint-sealant", tag, Level.ERROR, "a sealant to ASTM C920"));
    }
    findings.add(inadequate("mortar-class", "GT-4", Level.ERROR, "ANSI A118.1"));
    findings.add(inadequate("backing", "GT-6", Level.ERROR, "=metallic, painted"));
    findings.add(inadequate("movement-width", "GT-3", Level.ERROR, "1/8 in"));
    findings.add(inadequate("tile-standard", "GT-2", Level.WARNING, "ANSI A137.1"));
    for (String tag : TAGS.subList(3, 7)) {
      findings.add(missing("mortar-colour", tag, Level.WARNING, "white"));
    }
    findings.add(wholeSet());
    findings.add(inadequate("unit-slip", "GT-8", Level.NOTE, "400 psi (4.0 MPa)"));
    findings.add(inadequate("unresolved", "GT-7", Level.WARNING, "[white] [grey]"));
    findings.add(suppressed(missing("coverage", "GT-1", Level.WARNING, "95 % or more")));
    return findings;
  }

  private static Finding wholeSet() {
    return new Finding(
        "mockup/section 09 30 13",
        "mockup",
        FindingKind.MISSING,
        Level.ERROR,
        State.NEW,
        TAGS,
        "process.mockup",
        new Origin(SPEC, null, null, null, 41, "1.6 A", "Quality assurance"),
        List.of(),
        "No mock-up is required before glass tile is set.",
        "",
        "a mock-up required before installation starts",
        List.of(),
        "Is a mock-up wanted for the glass tile, and who accepts it?",
        "Before glass tile is ordered, set a mock-up of 4 by 4 ft with the specified mortar and"
            + " grout at the place directed, and have it accepted in writing.",
        "common practice, no source",
        "",
        "",
        Finding.FindingWording.NONE);
  }

  public static Finding missing(String check, String tag, Level level, String expected) {
    return new Finding(
        check + "/" + tag,
        check,
        FindingKind.MISSING,
        level,
        State.NEW,
        List.of(tag),
        attribute(check),
        cell("F", tag + " mosaic, 1 x 1 in, mesh-mounted"),
        List.of(),
        "The documents do not say for " + tag + ": " + CHECKS.get(check) + ".",
        "",
        expected,
        List.of(),
        "What is required of " + tag + " here: " + expected + "?",
        "For " + tag + ": provide " + expected + ", shown by a test report of the maker.",
        "common practice, no source",
        "",
        "",
        Finding.FindingWording.NONE);
  }

  public static Finding inadequate(String check, String tag, Level level, String found) {
    return new Finding(
        check + "/" + tag,
        check,
        FindingKind.INADEQUATE,
        level,
        State.NEW,
        List.of(tag),
        attribute(check),
        cell("G", found),
        List.of(cell("H", found)),
        "What is stated for " + tag + " does not do: " + CHECKS.get(check) + ".",
        found,
        "see the suggested clause",
        List.of(),
        "",
        "For " + tag + ": replace the words \"" + found + "\".",
        "from memory",
        "",
        "",
        Finding.FindingWording.NONE);
  }

  private static Finding suppressed(Finding finding) {
    return new Finding(
        finding.id(),
        finding.check(),
        finding.kind(),
        finding.level(),
        finding.state(),
        finding.tags(),
        finding.attribute(),
        finding.origin(),
        finding.places(),
        finding.message(),
        finding.found(),
        finding.expected(),
        finding.steps(),
        finding.question(),
        finding.clause(),
        finding.source(),
        "",
        "coverage is inspected on site by the owner's laboratory",
        Finding.FindingWording.NONE);
  }

  private static List<Verdict> verdicts() {
    List<Verdict> verdicts = new ArrayList<>();
    List<Finding> findings = findings();
    for (String tag : TAGS) {
      for (String check : CHECKS.keySet()) {
        boolean found =
            findings.stream().anyMatch(f -> f.check().equals(check) && f.tags().contains(tag));
        boolean floor = check.equals("floor-slip");
        Verdict.Outcome outcome =
            found
                ? Verdict.Outcome.FINDING
                : floor ? Verdict.Outcome.NOT_APPLICABLE : Verdict.Outcome.SATISFIED;
        String words = found ? "not stated" : floor ? "on a wall" : "as stated in 2.3 B";
        verdicts.add(new Verdict(check, tag, outcome, words, cell("F", tag)));
      }
    }
    return verdicts;
  }

  private static Calculation calculation(String tag) {
    Quantity movement = Quantity.of(9e-6 * 12 * 12 * 144, Unit.INCH);
    return new Calculation(
        "movement-width/" + tag,
        "movement-width",
        tag,
        "Width of the movement joint",
        List.of(
            new Calculation.Input(
                "spacing",
                "Spacing of joints",
                Quantity.of(12, Unit.FOOT),
                cell("K", tag),
                false,
                "12'-0\" o.c."),
            new Calculation.Input(
                "alpha",
                "Expansion of the tile",
                Quantity.of(9e-6, Unit.PER_KELVIN),
                null,
                true,
                "soda-lime glass, EN 572-1"),
            new Calculation.Input(
                "range",
                "Temperature range of the tile",
                Quantity.of(80, Unit.KELVIN_DIFFERENCE),
                Origin.ofDocument("moorhen.yaml"),
                false,
                "-20 to 60 °C"),
            new Calculation.Input(
                "capability",
                "Movement capability",
                Quantity.of(0.25, Unit.ONE),
                null,
                true,
                "ASTM C920 Class 25"),
            new Calculation.Input(
                "width",
                "Stated width",
                Quantity.of(0.125, Unit.INCH),
                cell("L", tag),
                false,
                "1/8\"")),
        List.of(
            new Calculation.Step(
                "movement",
                "Movement of the tile",
                "expansion x spacing x range",
                "{alpha}*{spacing}*12*{range}",
                Quantity.of(9e-6 * 12 * 12 * 80, Unit.INCH)),
            new Calculation.Step(
                "required",
                "Width required",
                "movement / capability",
                "MAX({movement}/{capability},0.25)",
                Quantity.of(9e-6 * 12 * 12 * 80 / 0.25, Unit.INCH))));
  }

  private static String attribute(String check) {
    return switch (check) {
      case "bond-strength" -> "mortar.bond";
      case "joint-sealant" -> "sealant.standard";
      case "mortar-colour" -> "mortar.colour";
      default -> check.replace('-', '.');
    };
  }

  private static Map<String, String> checks() {
    Map<String, String> checks = new LinkedHashMap<>();
    checks.put("mortar-class", "mortar standard fit for glass");
    checks.put("bond-strength", "shear bond of the mortar to glass");
    checks.put("joint-sealant", "standard of the movement-joint sealant");
    checks.put("mockup", "mock-up before installation");
    checks.put("backing", "backing that the mortar does not attack");
    checks.put("tile-standard", "glass tile standard");
    checks.put("mortar-colour", "white mortar behind see-through tile");
    checks.put("movement-width", "width of movement joints");
    checks.put("coverage", "mortar behind the whole tile");
    checks.put("floor-slip", "wet friction on floors");
    checks.put("unit-slip", "figures that agree in both units");
    checks.put("unresolved", "choices left open");
    return checks;
  }
}
