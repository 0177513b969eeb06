package clearbed.read;

import java.util.function.Supplier;

/**
 * The formats that are read. Readers are made on demand, so that a run loads the classes of the
 * formats it meets and no others.
 */
enum Format {
  XLSX("xlsx", "an Excel workbook", XlsxReader::new),
  XLS("xls", "an Excel workbook", XlsReader::new),
  DOCX("docx", "a Word document", WordReader::new),
  PDF("pdf", "a PDF file", PdfReader::new),
  CSV("csv", "a delimited text file", DelimitedReader::new),
  TXT("txt", "a text file", TextReader::new),
  MD("md", "a text file", TextReader::new),
  ODS("ods", "an OpenDocument spreadsheet", OdsReader::new),
  ODT("odt", "an OpenDocument text", OdtReader::new),
  DOC("doc", "a Word document", () -> new MarkupReader("doc")),
  RTF("rtf", "an RTF document", () -> new MarkupReader("rtf")),
  HTML("html", "a web page", () -> new MarkupReader("html")),
  SPREADSHEET_XML("xml", "an Excel 2003 XML workbook", () -> new MarkupReader("spreadsheet-xml")),
  WORD_XML("xml", "a Word 2003 XML document", () -> new MarkupReader("word-xml"));

  private final String shortName;
  private final String description;
  private final Supplier<FormatReader> reader;

  Format(String shortName, String description, Supplier<FormatReader> reader) {
    this.shortName = shortName;
    this.description = description;
    this.reader = reader;
  }

  String shortName() {
    return shortName;
  }

  /** With its article: {@code a Word document}. */
  String description() {
    return description;
  }

  FormatReader reader() {
    return reader.get();
  }
}
