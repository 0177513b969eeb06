package clearbed.samples;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** Turns outlines and schedules into files by the extension of the name. */
public final class Rendering {
  private Rendering() {}

  /** A section or running notes. A PDF of an outline numbered as notes is a drawing sheet. */
  public static byte[] outline(Outline outline, String fileName) {
    return switch (extension(fileName)) {
      case "docx" -> WordFile.section(outline);
      case "txt" -> PlainFile.text(outline);
      case "md" -> MarkdownFile.section(outline);
      case "html", "htm" -> HtmlFile.section(outline);
      case "rtf" -> RtfFile.section(outline);
      case "odt" -> OpenDocumentFile.text(outline);
      case "pdf" ->
          outline.about("sheet").isEmpty() ? PdfFile.section(outline) : PdfFile.sheet(outline);
      default -> throw new IllegalArgumentException("no section format for " + fileName);
    };
  }

  public static byte[] schedule(Schedule schedule, String sheetName, String fileName) {
    return switch (extension(fileName)) {
      case "xlsx" -> SpreadsheetFile.xlsx(schedule, sheetName);
      case "xls" -> SpreadsheetFile.xls(schedule, sheetName);
      case "csv" -> PlainFile.csv(schedule, ',');
      case "tsv" -> PlainFile.csv(schedule, '\t');
      case "docx" -> WordFile.schedule(schedule);
      case "html", "htm" -> HtmlFile.schedule(schedule);
      case "rtf" -> RtfFile.schedule(schedule);
      case "ods" -> OpenDocumentFile.spreadsheet(schedule, sheetName);
      case "pdf" -> PdfFile.schedule(schedule);
      default -> throw new IllegalArgumentException("no schedule format for " + fileName);
    };
  }

  /** Several files in one archive. */
  public static byte[] bundle(Map<String, byte[]> files) {
    return FixedZip.of(new LinkedHashMap<>(files));
  }

  private static String extension(String name) {
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }
}
