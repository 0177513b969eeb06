package clearbed.read.markup;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Gap;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.Source;
import clearbed.read.source.Unreadable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
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
import org.xml.sax.ContentHandler;
import org.xml.sax.SAXException;

/**
 * Formats that Tika turns into XHTML. Files embedded in them are not opened, and nothing is fetched
 * that they refer to.
 */
public final class MarkupReader implements FormatReader {
  private static final Pattern DECLARES =
      Pattern.compile("<!ENTITY|<!DOCTYPE[^>\\[]{0,200}\\bSYSTEM\\b", Pattern.CASE_INSENSITIVE);

  private final String kind;

  public MarkupReader(String kind) {
    this.kind = kind;
  }

  @Override
  public Document read(Source source) throws IOException, SAXException, TikaException, Unreadable {
    if (kind.endsWith("-xml")) {
      try (InputStream in = Files.newInputStream(source.file())) {
        requireNoEntities(in);
      }
    }
    Set<String> struckClasses =
        kind.equals("html") ? Striking.classes(Files.readAllBytes(source.file())) : Set.of();
    MarkupBlocks blocks =
        new MarkupBlocks(source.path(), kind.equals("spreadsheet-xml"), struckClasses);
    Metadata metadata = new Metadata();
    metadata.set(TikaCoreProperties.RESOURCE_NAME_KEY, source.name());
    ParseContext context = new ParseContext();
    NotOpened embedded = new NotOpened();
    context.set(EmbeddedDocumentExtractor.class, embedded);
    context.set(HtmlMapper.class, new WithSpansAndLines());
    try (TikaInputStream in = open(source)) {
      parser().parse(in, kind.equals("rtf") ? new RtfHandler(blocks) : blocks, metadata, context);
    }
    if (kind.equals("rtf") && RtfEnd.isMissing(Files.readAllBytes(source.file())))
      blocks.gap("cut short: its end is missing; get the file again");
    if (embedded.count > 0) blocks.gap("embedded files (" + embedded.count + ") are not read");
    if (kind.equals("doc")) return withMarks(source, blocks);
    String format = kind.endsWith("-xml") ? "xml" : kind;
    return Document.read(source.path(), format, blocks.blocks(), blocks.gaps());
  }

  private static Document withMarks(Source source, MarkupBlocks read) {
    List<Block> blocks = read.blocks();
    DocMarks marks = null;
    try {
      marks = DocMarks.of(source);
    } catch (IOException | RuntimeException e) {
      read.gap("its notes, comments and tracked changes could not be told from its text");
    }
    List<Gap> gaps = new ArrayList<>(read.gaps());
    if (marks != null) {
      DocBlocks places = new DocBlocks(source.path(), blocks);
      blocks = places.with(marks);
      gaps.addAll(places.gaps().list());
    }
    return Document.read(source.path(), Format.DOC.shortName(), blocks, gaps);
  }

  private TikaInputStream open(Source source) throws IOException {
    return kind.equals("rtf")
        ? TikaInputStream.get(RtfMarks.marked(Files.readAllBytes(source.file())))
        : TikaInputStream.get(source.file());
  }

  /** The parser passes entities over in silence; what stood there would be missed. */
  private static void requireNoEntities(InputStream in) throws IOException, Unreadable {
    // What declares them may stand behind any length of remarks, in two bytes a character.
    String text = new String(in.readAllBytes(), StandardCharsets.ISO_8859_1).replace("\0", "");
    if (DECLARES.matcher(text).find())
      throw new Unreadable("declares its own entities; not read for safety");
  }

  private Parser parser() {
    return switch (kind) {
      case "doc" -> new OfficeParser();
      case "rtf" -> new RTFParser();
      case "html" -> new JSoupParser();
      case "spreadsheet-xml" -> new SpreadsheetMLParser();
      case "word-xml" -> new WordMLParser();
      default -> throw new IllegalStateException(kind);
    };
  }

  /** Lets through what tells where the cells of a table stand and which words are struck. */
  private static final class WithSpansAndLines extends DefaultHtmlMapper {
    private static final Set<String> INLINE = Set.of("s", "strike", "span", "font", "u", "b", "i");

    @Override
    public String mapSafeElement(String element) {
      String name = element.toLowerCase(Locale.ROOT);
      return INLINE.contains(name) ? name : super.mapSafeElement(element);
    }

    @Override
    public String mapSafeAttribute(String element, String attribute) {
      return switch (attribute) {
        case "colspan", "rowspan", "style" -> attribute;
        case "class" -> Striking.CLASS;
        default -> super.mapSafeAttribute(element, attribute);
      };
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
