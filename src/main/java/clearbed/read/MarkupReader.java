package clearbed.read;

import clearbed.model.Document;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.tika.exception.TikaException;
import org.apache.tika.extractor.EmbeddedDocumentExtractor;
import org.apache.tika.io.TikaInputStream;
import org.apache.tika.metadata.Metadata;
import org.apache.tika.metadata.TikaCoreProperties;
import org.apache.tika.parser.ParseContext;
import org.apache.tika.parser.Parser;
import org.apache.tika.parser.html.DefaultHtmlMapper;
import org.apache.tika.parser.html.HtmlMapper;
import org.apache.tika.parser.html.JSoupParser;
import org.apache.tika.parser.microsoft.OfficeParser;
import org.apache.tika.parser.microsoft.rtf.RTFParser;
import org.apache.tika.parser.microsoft.xml.SpreadsheetMLParser;
import org.apache.tika.parser.microsoft.xml.WordMLParser;
import org.apache.tika.parser.odf.OpenDocumentParser;
import org.xml.sax.ContentHandler;
import org.xml.sax.SAXException;

/**
 * Formats that Tika turns into XHTML. Files embedded in them are not opened, and nothing is fetched
 * that they refer to.
 */
final class MarkupReader implements FormatReader {
  private static final int PROLOG = 1 << 16;
  private static final Pattern DECLARES =
      Pattern.compile("<!ENTITY|<!DOCTYPE[^>\\[]{0,200}\\bSYSTEM\\b", Pattern.CASE_INSENSITIVE);

  private final String kind;

  MarkupReader(String kind) {
    this.kind = kind;
  }

  @Override
  public Document read(Source source) throws IOException, SAXException, TikaException, Unreadable {
    if (kind.equals("odt")) requireSound(source);
    if (kind.endsWith("-xml")) {
      try (InputStream in = Files.newInputStream(source.file())) {
        requireNoEntities(in);
      }
    }
    MarkupBlocks blocks = new MarkupBlocks(source.path(), kind.equals("spreadsheet-xml"));
    Metadata metadata = new Metadata();
    metadata.set(TikaCoreProperties.RESOURCE_NAME_KEY, source.name());
    ParseContext context = new ParseContext();
    NotOpened embedded = new NotOpened();
    context.set(EmbeddedDocumentExtractor.class, embedded);
    context.set(HtmlMapper.class, new WithSpans());
    try (TikaInputStream in = open(source)) {
      parser().parse(in, blocks, metadata, context);
    }
    if (embedded.count > 0) blocks.gap("embedded files (" + embedded.count + ") are not read");
    String format = kind.endsWith("-xml") ? "xml" : kind;
    return Document.read(source.path(), format, blocks.blocks(), blocks.gaps());
  }

  private TikaInputStream open(Source source) throws IOException {
    return kind.equals("rtf")
        ? TikaInputStream.get(RtfRows.marked(Files.readAllBytes(source.file())))
        : TikaInputStream.get(source.file());
  }

  /** The parser passes entities over in silence; what stood there would be missed. */
  private static void requireNoEntities(InputStream in) throws IOException, Unreadable {
    String head = new String(in.readNBytes(PROLOG), StandardCharsets.ISO_8859_1);
    if (DECLARES.matcher(head).find())
      throw new Unreadable("declares its own entities; not read for safety");
  }

  private static void requireSound(Source source) throws IOException, Unreadable {
    try (ZipFile zip = new ZipFile(source.file().toFile())) {
      OdsReader.requireSound(zip);
      ZipEntry content = zip.getEntry("content.xml");
      if (content == null) return;
      try (InputStream in = zip.getInputStream(content)) {
        requireNoEntities(in);
      }
    }
  }

  private Parser parser() {
    return switch (kind) {
      case "doc" -> new OfficeParser();
      case "rtf" -> new RTFParser();
      case "odt" -> new OpenDocumentParser();
      case "html" -> new JSoupParser();
      case "spreadsheet-xml" -> new SpreadsheetMLParser();
      case "word-xml" -> new WordMLParser();
      default -> throw new IllegalStateException(kind);
    };
  }

  /** Lets the attributes through that tell where the cells of a table stand. */
  private static final class WithSpans extends DefaultHtmlMapper {
    @Override
    public String mapSafeAttribute(String element, String attribute) {
      return attribute.equals("colspan") || attribute.equals("rowspan")
          ? attribute
          : super.mapSafeAttribute(element, attribute);
    }
  }

  /** Counts what is embedded, pictures aside, and leaves it closed. */
  private static final class NotOpened implements EmbeddedDocumentExtractor {
    private int count;

    @Override
    public boolean shouldParseEmbedded(Metadata metadata) {
      String type = metadata.get(Metadata.CONTENT_TYPE);
      if (type != null && !type.startsWith("image/")) count++;
      return false;
    }

    @Override
    public void parseEmbedded(
        InputStream stream, ContentHandler handler, Metadata metadata, boolean html) {}
  }
}
