package clearbed.read.source;

/** The formats that are read. */
public enum Format {
  XLSX("xlsx", "an Excel workbook"),
  XLS("xls", "an Excel workbook"),
  DOCX("docx", "a Word document"),
  PDF("pdf", "a PDF file"),
  CSV("csv", "a delimited text file"),
  TXT("txt", "a text file"),
  MD("md", "a text file"),
  ODS("ods", "an OpenDocument spreadsheet"),
  ODT("odt", "an OpenDocument text"),
  DOC("doc", "a Word document"),
  RTF("rtf", "an RTF document"),
  HTML("html", "a web page"),
  SPREADSHEET_XML("xml", "an Excel 2003 XML workbook"),
  WORD_XML("xml", "a Word 2003 XML document");

  private final String shortName;
  private final String description;

  Format(String shortName, String description) {
    this.shortName = shortName;
    this.description = description;
  }

  public String shortName() {
    return shortName;
  }

  /** Whether its files are zip files of parts. */
  public boolean isZipped() {
    return switch (this) {
      case XLSX, DOCX, ODS, ODT -> true;
      default -> false;
    };
  }

  /** With its article: {@code a Word document}. */
  public String description() {
    return description;
  }
}
