package clearbed.read.sheet;

import clearbed.model.document.Document;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.ParserLimits;
import clearbed.read.source.Reasons;
import clearbed.read.source.Source;
import clearbed.read.source.Unreadable;
import clearbed.read.xml.OdfStyles;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.poi.util.XMLHelper;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.XMLReader;
import org.xml.sax.helpers.DefaultHandler;

/** OpenDocument spreadsheets, read directly because cells need their addresses. */
public final class OdsReader implements FormatReader {
  private static final long LARGEST = 1L << 30;

  @Override
  public Document read(Source source) throws IOException, SAXException, Unreadable {
    try (ZipFile zip = new ZipFile(source.file().toFile())) {
      requireSound(zip);
      ZipEntry content = zip.getEntry("content.xml");
      if (content == null) throw new Unreadable("a spreadsheet without content; save it again");
      OdfStyles styles = new OdfStyles();
      parse(zip, zip.getEntry("styles.xml"), styles);
      OdsContent handler = new OdsContent(source.path(), styles);
      parse(zip, content, handler);
      return Document.read(source.path(), Format.ODS.shortName(), handler.blocks(), handler.gaps());
    }
  }

  /**
   * Streams a part of an OpenDocument file; nothing happens where there is none.
   *
   * @param part may be null
   */
  public static void parse(ZipFile zip, ZipEntry part, DefaultHandler handler)
      throws IOException, SAXException {
    if (part == null) return;
    try (InputStream in = new Bounded(zip.getInputStream(part))) {
      XMLReader reader = XMLHelper.newXMLReader();
      // An entity would be passed over in silence, and what it stands for be missed.
      reader.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      reader.setContentHandler(handler);
      reader.setErrorHandler(handler);
      reader.parse(new InputSource(in));
    } catch (ParserConfigurationException e) {
      throw new SAXException(e);
    }
  }

  /**
   * @throws Unreadable when it is locked, or a part expands out of all proportion
   */
  public static void requireSound(ZipFile zip) throws IOException, Unreadable {
    if (isEncrypted(zip)) throw new Unreadable(Reasons.PASSWORD);
    for (String name : new String[] {"content.xml", "styles.xml"}) {
      ZipEntry part = zip.getEntry(name);
      if (part != null && ParserLimits.isBomb(part)) throw new Unreadable(Reasons.BOMB);
    }
  }

  private static boolean isEncrypted(ZipFile zip) throws IOException {
    ZipEntry manifest = zip.getEntry("META-INF/manifest.xml");
    if (manifest == null) return false;
    try (InputStream in = zip.getInputStream(manifest)) {
      String text = new String(in.readNBytes(1 << 20), StandardCharsets.UTF_8);
      return text.contains("encryption-data");
    }
  }

  /** Ends a part that expands without end. */
  private static final class Bounded extends FilterInputStream {
    private long left = LARGEST;

    Bounded(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      int value = super.read();
      counted(value < 0 ? -1 : 1);
      return value;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
      return counted(super.read(buffer, offset, length));
    }

    private int counted(int n) throws IOException {
      if (n > 0) left -= n;
      if (left < 0) throw new IOException("zip bomb: a part of more than " + LARGEST + " bytes");
      return n;
    }
  }
}
