package clearbed.read.sheet;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.document.Table.Cell;
import clearbed.read.block.CleanText;
import clearbed.read.detect.Dialect;
import clearbed.read.detect.TextEncoding;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.Source;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Comma, semicolon, tab or bar delimited text: one sheet, addressed as a spreadsheet shows it. */
public final class DelimitedReader implements FormatReader {
  private static final int SAMPLE = 1 << 16;

  @Override
  public Document read(Source source) throws IOException {
    String start = start(source);
    char delimiter = Dialect.detect(start).delimiter();
    boolean hint = start.regionMatches(true, 0, "sep=", 0, 4);
    try {
      return document(source, delimiter, hint, true, List.of());
    } catch (IOException | UncheckedIOException | IllegalStateException e) {
      // A quotation mark without its partner (an inch sign, say) would swallow the rest of the
      // file.
      String reason = "quotation marks do not pair; each line was read as it stands";
      Gap gap = new Gap(Origin.ofDocument(source.path()), reason);
      return document(source, delimiter, hint, false, List.of(gap));
    }
  }

  private static String start(Source source) throws IOException {
    try (BufferedReader in = TextEncoding.open(source.file())) {
      char[] buffer = new char[SAMPLE];
      int size = 0;
      for (int n = 0; n >= 0 && size < SAMPLE; n = in.read(buffer, size, SAMPLE - size)) size += n;
      return new String(buffer, 0, size);
    }
  }

  private static Document document(
      Source source, char delimiter, boolean hint, boolean quoted, List<Gap> gaps)
      throws IOException {
    SheetGrid grid = new SheetGrid(source.path(), null);
    try (BufferedReader in = TextEncoding.open(source.file());
        CSVParser parser = Dialect.format(delimiter, quoted).parse(in)) {
      int row = 0;
      for (CSVRecord record : parser) {
        // Spreadsheets take the hint away before they number the rows.
        if (hint && parser.getRecordNumber() == 1) continue;
        grid.row(++row, false);
        int column = 0;
        for (String value : record) grid.cell(column++, CleanText.of(value), "");
      }
    }
    String format = source.extension().equals("tsv") ? "tsv" : Format.CSV.shortName();
    Table table = grid.table();
    Stream<String> cells = table.rows().stream().flatMap(r -> r.cells().stream()).map(Cell::text);
    List<Gap> all = new ArrayList<>(gaps);
    all.addAll(TextEncoding.lost(source.path(), cells));
    return Document.read(source.path(), format, List.of(table), all);
  }
}
