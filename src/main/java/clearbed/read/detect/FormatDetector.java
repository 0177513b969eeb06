package clearbed.read.detect;

import clearbed.mark.ClosingLine;
import clearbed.mark.JsonMark;
import clearbed.mark.OwnOutput;
import clearbed.read.source.Format;
import clearbed.read.source.Reasons;
import clearbed.read.source.Source;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Locale;
import java.util.Map;

/**
 * Tells the format of a file by its first bytes; the name decides only among kinds of plain text,
 * and what to say when the two disagree.
 */
public final class FormatDetector {
  private static final int HEAD = 1 << 16;
  private static final byte[] OLE2 = {
    (byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0, (byte) 0xA1, (byte) 0xB1, 0x1A, (byte) 0xE1
  };

  /** What a file of this name ought to be. */
  private static final Map<String, Format> BY_NAME =
      Map.ofEntries(
          Map.entry("xlsx", Format.XLSX),
          Map.entry("xlsm", Format.XLSX),
          Map.entry("xltx", Format.XLSX),
          Map.entry("xls", Format.XLS),
          Map.entry("docx", Format.DOCX),
          Map.entry("docm", Format.DOCX),
          Map.entry("dotx", Format.DOCX),
          Map.entry("doc", Format.DOC),
          Map.entry("pdf", Format.PDF),
          Map.entry("csv", Format.CSV),
          Map.entry("tsv", Format.CSV),
          Map.entry("tab", Format.CSV),
          Map.entry("txt", Format.TXT),
          Map.entry("text", Format.TXT),
          Map.entry("md", Format.MD),
          Map.entry("markdown", Format.MD),
          Map.entry("rtf", Format.RTF),
          Map.entry("odt", Format.ODT),
          Map.entry("ods", Format.ODS),
          Map.entry("html", Format.HTML),
          Map.entry("htm", Format.HTML),
          Map.entry("xhtml", Format.HTML));

  private FormatDetector() {}

  public static Detection detect(Source source) throws IOException {
    if (Files.size(source.file()) == 0) {
      return isReadName(source) || isArchiveName(source)
          ? Detection.refuse("empty file")
          : notRead(source);
    }
    byte[] head = head(source);
    if (starts(head, "PK\3\4") || starts(head, "PK\5\6")) return ofZip(source);
    if (isArchiveName(source))
      return Detection.refuse("damaged, or no zip archive at all; pack it again");
    if (starts(head, OLE2)) return CompoundFile.detect(source, notRead(source));
    if (starts(head, "{\\rtf")) return Detection.as(Format.RTF);
    if (isOwn(source, head)) return Detection.ignore(OwnOutput.NOT_READ);
    if (hasPdfMark(head)) return Detection.as(Format.PDF);
    return TextEncoding.looksLikeText(head) ? ofText(source, head) : notText(source);
  }

  /** A PDF or a text of ours, untouched, or JSON of ours in any state. */
  private static boolean isOwn(Source source, byte[] head) throws IOException {
    if (JsonMark.kind(head) != null) return true;
    OwnOutput own = ClosingLine.of(source.file());
    return own != null && own.untouched();
  }

  private static byte[] head(Source source) throws IOException {
    try (InputStream in = Files.newInputStream(source.file())) {
      return in.readNBytes(HEAD);
    }
  }

  private static Detection ofZip(Source source) throws IOException {
    ZipKind kind = ZipKind.of(source.file());
    if (kind == ZipKind.PLAIN && !isReadName(source)) return notRead(source);
    if (kind == ZipKind.DAMAGED && isUnreadName(source)) return notRead(source);
    return switch (kind) {
      case EXCEL -> Detection.as(Format.XLSX);
      case WORD -> Detection.as(Format.DOCX);
      case OPEN_SHEET -> Detection.as(Format.ODS);
      case OPEN_TEXT -> Detection.as(Format.ODT);
      case OWN -> Detection.ignore(OwnOutput.NOT_READ);
      case OWN_IN_WORK -> Detection.ignore(OwnOutput.IN_WORK);
      case EXCEL_BINARY -> Detection.refuse("a binary workbook (.xlsb); save it as .xlsx");
      case ENCRYPTED -> Detection.refuse(Reasons.PASSWORD);
      case DAMAGED ->
          Detection.refuse(
              "damaged or truncated "
                  + (source.extension().isEmpty() ? "zip archive" : "." + source.extension())
                  + ": the list of its parts is missing or wrong; open and save it again");
      case OTHER -> Detection.ignore("not a format that is read (" + kindOfName(source) + ")");
      case PLAIN -> mismatch(source, "a zip archive of other things");
    };
  }

  private static Detection ofText(Source source, byte[] head) {
    String start = TextEncoding.preview(head).stripLeading().toLowerCase(Locale.ROOT);
    Format named = BY_NAME.get(source.extension());
    if (start.startsWith("<?xml")
        || start.startsWith("<!doctype")
        || start.startsWith("<html")
        || start.startsWith("<table")) {
      Detection markup = ofMarkup(source, start, named);
      if (markup != null) return markup;
    }
    if (named == null)
      return source.named() && source.extension().isEmpty()
          ? Detection.as(Format.TXT)
          : notRead(source);
    return switch (named) {
      case CSV, TXT, MD, HTML -> Detection.as(named);
      case XLSX, XLS, ODS ->
          Dialect.detect(TextEncoding.preview(head)).isSure()
              ? Detection.as(Format.CSV)
              : mismatch(source, "plain text");
      case DOC, DOCX, RTF, ODT -> Detection.as(Format.TXT);
      default -> mismatch(source, "plain text");
    };
  }

  private static Detection ofMarkup(Source source, String start, Format named) {
    if (named == Format.TXT || named == Format.MD) return null;
    if (start.contains("urn:schemas-microsoft-com:office:spreadsheet")) {
      return Detection.as(Format.SPREADSHEET_XML);
    }
    if (start.contains("schemas.microsoft.com/office/word/2003/wordml")) {
      return Detection.as(Format.WORD_XML);
    }
    if (start.contains("<html") || start.contains("<!doctype html") || start.contains("<table")) {
      return Detection.as(Format.HTML);
    }
    return named == null || named == Format.CSV ? null : mismatch(source, "some other XML");
  }

  private static Detection notText(Source source) {
    return isReadName(source) ? mismatch(source, "something else") : notRead(source);
  }

  private static Detection mismatch(Source source, String found) {
    String expected = BY_NAME.get(source.extension()).description();
    return Detection.refuse(
        "not " + expected + ": its content is " + found + "; open and save it again");
  }

  private static Detection notRead(Source source) {
    return Detection.ignore("not a format that is read (" + kindOfName(source) + ")");
  }

  private static String kindOfName(Source source) {
    return source.extension().isEmpty() ? "no extension" : "." + source.extension();
  }

  private static boolean isArchiveName(Source source) {
    return source.extension().equals("zip");
  }

  private static boolean isReadName(Source source) {
    return isReadName(source.name());
  }

  /** True for the name of a file that is a document, by all that its name tells. */
  public static boolean isReadName(String name) {
    return BY_NAME.containsKey(Source.extensionOf(name));
  }

  private static boolean isUnreadName(Source source) {
    return !isReadName(source) && !source.extension().equals("zip");
  }

  private static boolean hasPdfMark(byte[] head) {
    String start = new String(head, 0, Math.min(1024, head.length), StandardCharsets.ISO_8859_1);
    return start.contains("%PDF-");
  }

  private static boolean starts(byte[] head, String mark) {
    return starts(head, mark.getBytes(StandardCharsets.ISO_8859_1));
  }

  private static boolean starts(byte[] head, byte[] mark) {
    if (head.length < mark.length) return false;
    for (int i = 0; i < mark.length; i++) if (head[i] != mark[i]) return false;
    return true;
  }
}
