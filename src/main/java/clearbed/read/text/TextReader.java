package clearbed.read.text;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Gap;
import clearbed.read.detect.Dialect;
import clearbed.read.detect.TextEncoding;
import clearbed.read.sheet.DelimitedReader;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.Source;
import java.io.BufferedReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Plain text and Markdown. A text that is really delimited is read as such; a table drawn with bars
 * becomes a table.
 */
public final class TextReader implements FormatReader {
  private static final int SAMPLE = 1 << 15;

  @Override
  public Document read(Source source) throws IOException {
    List<String> lines;
    try (BufferedReader in = TextEncoding.open(source.file())) {
      lines = in.lines().toList();
    }
    boolean markdown = source.extension().equals("md") || source.extension().equals("markdown");
    if (!markdown && isDelimited(lines)) return new DelimitedReader().read(source);
    TextBlocks blocks = new TextBlocks(source.path(), markdown);
    blocks.add(lines);
    String format = (markdown ? Format.MD : Format.TXT).shortName();
    List<Gap> gaps = new ArrayList<>(TextEncoding.lost(source.path(), lines.stream()));
    gaps.addAll(blocks.gaps());
    return Document.read(source.path(), format, blocks.blocks(), gaps);
  }

  private static boolean isDelimited(List<String> lines) {
    StringBuilder start = new StringBuilder();
    for (String line : lines) {
      if (start.length() > SAMPLE) break;
      start.append(line).append('\n');
    }
    Dialect dialect = Dialect.detect(start.toString());
    // Bars with borders are drawn tables, which have rules and outer bars to take away.
    return dialect.isSure() && dialect.delimiter() != '|';
  }
}
