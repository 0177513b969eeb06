package clearbed.read;

import clearbed.model.Block;
import clearbed.model.Document;
import clearbed.model.Document.Gap;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.model.Table;
import clearbed.model.Table.Cell;
import clearbed.model.Table.Row;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes a document to bytes and back, equal in every part, for another process or another day.
 *
 * <p>The bytes are a mark, the version of the layout, the length and the checksum of the body, and
 * the body. The checksum finds damage; as it does not find malice, every figure in the body is also
 * held against what is there before it is used.
 */
public final class DocumentCodec {
  /** Raised whenever the layout or the model's records change; other versions are refused. */
  static final int VERSION = 2;

  private static final int CONTINUED = 1;
  private static final int SPANS = 2;
  private static final int REMARKED = 4;
  private static final int FROM_ABOVE = 8;
  private static final int PAGED = 16;

  private static final int PARAGRAPH = 0;
  private static final int TABLE = 1;

  private DocumentCodec() {}

  /** The document in bytes; the same document gives the same bytes. */
  public static byte[] encode(Document document) {
    PackedOutput out = new PackedOutput();
    out.text(document.path());
    out.text(document.format());
    out.number(document.status().ordinal());
    out.text(document.reason());
    out.number(document.blocks().size());
    for (Block block : document.blocks()) {
      if (block instanceof Paragraph paragraph) write(out, paragraph);
      else if (block instanceof Table table) write(out, table);
    }
    out.number(document.gaps().size());
    for (Gap gap : document.gaps()) {
      write(out, gap.origin());
      out.text(gap.reason());
      out.number(gap.fate().ordinal());
    }
    return out.sealed(VERSION);
  }

  /**
   * The document that was written.
   *
   * @throws DamagedDocument when the bytes are cut, changed, of another version or of something
   *     else
   */
  public static Document decode(byte[] bytes) throws DamagedDocument {
    PackedInput in = PackedInput.open(bytes, VERSION);
    String path = in.text();
    String format = in.text();
    Document.Status status = in.oneOf(Document.Status.values());
    String reason = in.text();
    List<Block> blocks = new ArrayList<>();
    for (int left = in.count(); left > 0; left--) blocks.add(block(in));
    List<Gap> gaps = new ArrayList<>();
    for (int left = in.count(); left > 0; left--) {
      gaps.add(new Gap(origin(in), in.text(), in.oneOf(Document.Fate.values())));
    }
    in.requireEnd();
    return new Document(path, format, status, reason, blocks, gaps);
  }

  private static void write(PackedOutput out, Paragraph paragraph) {
    out.number(PARAGRAPH);
    write(out, paragraph.origin());
    out.text(paragraph.label());
    out.number(paragraph.headingLevel());
    out.number(paragraph.listLevel());
    out.text(paragraph.text());
    out.number(paragraph.region().ordinal());
  }

  private static void write(PackedOutput out, Table table) {
    out.number(TABLE);
    write(out, table.origin());
    out.flag(table.sheet());
    out.flag(table.turned());
    out.number(table.rows().size());
    for (Row row : table.rows()) {
      out.number(row.number());
      out.flag(row.hidden());
      out.number(row.cells().size());
      for (Cell cell : row.cells()) write(out, row, cell);
    }
  }

  /** A cell says only what is not as in most cells. */
  private static void write(PackedOutput out, Row row, Cell cell) {
    int flags =
        (cell.continued() ? CONTINUED : 0)
            | (cell.columnSpan() != 1 ? SPANS : 0)
            | ("".equals(cell.remark()) ? 0 : REMARKED)
            | (cell.firstRow() != row.number() ? FROM_ABOVE : 0)
            | (cell.page() != 0 ? PAGED : 0);
    out.number(flags);
    out.number(cell.column());
    out.text(cell.text());
    if ((flags & SPANS) != 0) out.number(cell.columnSpan());
    if ((flags & REMARKED) != 0) out.text(cell.remark());
    if ((flags & FROM_ABOVE) != 0) out.number(cell.firstRow());
    if ((flags & PAGED) != 0) out.number(cell.page());
  }

  private static void write(PackedOutput out, Origin origin) {
    out.flag(origin != null);
    if (origin == null) return;
    out.text(origin.document());
    out.text(origin.sheet());
    out.text(origin.cell());
    out.numberOrNull(origin.page());
    out.numberOrNull(origin.paragraph());
    out.text(origin.heading());
    out.text(origin.text());
    out.text(origin.part());
  }

  private static Block block(PackedInput in) throws DamagedDocument {
    return switch (in.number()) {
      case PARAGRAPH -> paragraph(in);
      case TABLE -> table(in);
      default -> throw new DamagedDocument("holds a block of an unknown kind");
    };
  }

  private static Paragraph paragraph(PackedInput in) throws DamagedDocument {
    Origin origin = origin(in);
    String label = in.text();
    int headingLevel = in.number();
    int listLevel = in.number();
    String text = in.text();
    Paragraph.Region region = in.oneOf(Paragraph.Region.values());
    return new Paragraph(origin, label, headingLevel, listLevel, text, region);
  }

  private static Table table(PackedInput in) throws DamagedDocument {
    Origin origin = origin(in);
    boolean sheet = in.flag();
    boolean turned = in.flag();
    List<Row> rows = new ArrayList<>();
    for (int left = in.count(); left > 0; left--) rows.add(row(in));
    return new Table(origin, rows, sheet, turned);
  }

  private static Row row(PackedInput in) throws DamagedDocument {
    int number = in.number();
    boolean hidden = in.flag();
    List<Cell> cells = new ArrayList<>();
    for (int left = in.count(); left > 0; left--) cells.add(cell(in, number));
    return new Row(number, cells, hidden);
  }

  private static Cell cell(PackedInput in, int row) throws DamagedDocument {
    int flags = in.number();
    int column = in.number();
    String text = in.text();
    int span = (flags & SPANS) != 0 ? in.number() : 1;
    String remark = (flags & REMARKED) != 0 ? in.text() : "";
    int firstRow = (flags & FROM_ABOVE) != 0 ? in.number() : row;
    int page = (flags & PAGED) != 0 ? in.number() : 0;
    return new Cell(column, span, (flags & CONTINUED) != 0, text, remark, firstRow, page);
  }

  private static Origin origin(PackedInput in) throws DamagedDocument {
    if (!in.flag()) return null;
    return new Origin(
        in.text(),
        in.text(),
        in.text(),
        in.numberOrNull(),
        in.numberOrNull(),
        in.text(),
        in.text(),
        in.text());
  }
}
