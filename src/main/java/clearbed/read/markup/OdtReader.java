package clearbed.read.markup;

import clearbed.model.document.Document;
import clearbed.read.sheet.OdsReader;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.Source;
import clearbed.read.source.Unreadable;
import clearbed.read.xml.OdfStyles;
import java.io.IOException;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.xml.sax.SAXException;

/**
 * OpenDocument texts, read directly: the library tells neither struck words nor tracked changes,
 * and gives headers and deleted words as if they were text.
 */
public final class OdtReader implements FormatReader {
  @Override
  public Document read(Source source) throws IOException, SAXException, Unreadable {
    try (ZipFile zip = new ZipFile(source.file().toFile())) {
      OdsReader.requireSound(zip);
      ZipEntry content = zip.getEntry("content.xml");
      if (content == null) throw new Unreadable("a text without content; save it again");
      MarkupBlocks blocks = new MarkupBlocks(source.path(), false, Set.of());
      OdtContent handler = new OdtContent(blocks, new OdfStyles());
      OdsReader.parse(zip, zip.getEntry("styles.xml"), handler);
      OdsReader.parse(zip, content, handler);
      int objects = handler.objects();
      if (objects > 0) blocks.gap("embedded files (" + objects + ") are not read");
      return Document.read(source.path(), Format.ODT.shortName(), blocks.blocks(), blocks.gaps());
    }
  }
}
