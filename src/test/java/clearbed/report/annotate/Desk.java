package clearbed.report.annotate;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.report.ProjectNames;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.ZipFile;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** A folder with sources, and one for the copies. */
record Desk(Path sources, Path copies) {

  static Desk in(Path folder) throws IOException {
    return new Desk(Files.createDirectories(folder.resolve("in")), folder.resolve("out"));
  }

  AnnotatedCopies.WrittenCopies annotate(Report report) {
    return AnnotatedCopies.write(report, this::source, copies);
  }

  private Path source(String document) {
    Path file = sources.resolve(document);
    return Files.exists(file) ? file : null;
  }

  static Report report(String document, String format, Finding... findings) {
    return new Report(
        new Report.RunDetails(
            "clearbed",
            "0",
            "north-america",
            "",
            "",
            "2026-03-02",
            List.of(),
            List.of(),
            "",
            ProjectNames.NONE,
            List.of(),
            List.of(),
            Report.Waited.NEVER),
        List.of(
            new Report.DocumentSummary(
                document, format, Document.Status.READ, "", 0, 0, List.of())),
        List.of(),
        Arrays.asList(findings),
        List.of(),
        List.of(),
        List.of());
  }

  static Finding finding(String check, Level level, Origin origin, Origin... places) {
    return new Finding(
        check + "/gt-1",
        check,
        FindingKind.MISSING,
        level,
        State.NEW,
        List.of("GT-1"),
        "",
        origin,
        List.of(places),
        "The " + check + " of GT-1 is not stated.",
        "",
        "",
        List.of(),
        "Which " + check + " has GT-1?",
        "",
        "",
        "",
        "",
        Finding.FindingWording.NONE);
  }

  static Origin cell(String document, String sheet, String cell) {
    return Origin.ofCell(document, sheet, cell, "words");
  }

  static Origin paragraph(String document, int number, String text) {
    return new Origin(document, null, null, null, number, null, text);
  }

  static Origin page(String document, int page, String text) {
    return new Origin(document, null, null, page, 1, null, text);
  }

  static String digest(Path file) throws IOException {
    try {
      byte[] hash = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
      return HexFormat.of().formatHex(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError(e);
    }
  }

  /** The elements of a name in a part of an Office file, read as plain XML. */
  static List<Element> elements(Path file, String part, String name) throws Exception {
    try (ZipFile zip = new ZipFile(file.toFile());
        InputStream in = zip.getInputStream(zip.getEntry(part))) {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      NodeList found = factory.newDocumentBuilder().parse(in).getElementsByTagNameNS("*", name);
      return java.util.stream.IntStream.range(0, found.getLength())
          .mapToObj(i -> (Element) found.item(i))
          .toList();
    }
  }
}
