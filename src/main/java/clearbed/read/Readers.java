package clearbed.read;

import clearbed.read.markup.MarkupReader;
import clearbed.read.markup.OdtReader;
import clearbed.read.pdf.PdfReader;
import clearbed.read.sheet.DelimitedReader;
import clearbed.read.sheet.OdsReader;
import clearbed.read.sheet.XlsReader;
import clearbed.read.sheet.XlsxReader;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.text.TextReader;
import clearbed.read.word.WordReader;

/**
 * The reader of each format. Readers are made on demand, so that a run loads the classes of the
 * formats it meets and no others.
 */
final class Readers {
  private Readers() {}

  static FormatReader of(Format format) {
    return switch (format) {
      case XLSX -> new XlsxReader();
      case XLS -> new XlsReader();
      case DOCX -> new WordReader();
      case PDF -> new PdfReader();
      case CSV -> new DelimitedReader();
      case TXT, MD -> new TextReader();
      case ODS -> new OdsReader();
      case ODT -> new OdtReader();
      case DOC -> new MarkupReader("doc");
      case RTF -> new MarkupReader("rtf");
      case HTML -> new MarkupReader("html");
      case SPREADSHEET_XML -> new MarkupReader("spreadsheet-xml");
      case WORD_XML -> new MarkupReader("word-xml");
    };
  }
}
