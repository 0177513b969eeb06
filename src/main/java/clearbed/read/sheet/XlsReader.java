package clearbed.read.sheet;

import clearbed.mark.OwnNotes;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.read.block.CleanText;
import clearbed.read.block.MarkedText;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.apache.poi.hssf.usermodel.HSSFAnchor;
import org.apache.poi.hssf.usermodel.HSSFClientAnchor;
import org.apache.poi.hssf.usermodel.HSSFComment;
import org.apache.poi.hssf.usermodel.HSSFPatriarch;
import org.apache.poi.hssf.usermodel.HSSFShape;
import org.apache.poi.hssf.usermodel.HSSFShapeGroup;
import org.apache.poi.hssf.usermodel.HSSFSheet;
import org.apache.poi.hssf.usermodel.HSSFSimpleShape;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.ss.util.CellRangeAddress;

/** Excel 97 to 2003 workbooks: every sheet, hidden ones too, is one table. */
public final class XlsReader implements FormatReader {
  /** Bytes that the length of a compound file is a multiple of (MS-CFB 2.2). */
  private static final int SECTOR = 512;

  private static final int COLUMNS = 256;

  private final DataFormatter formatter = new DataFormatter(Locale.US);

  public XlsReader() {
    formatter.setUseCachedValuesForFormulaCells(true);
  }

  @Override
  public Document read(Source source) throws IOException {
    List<Block> blocks = new ArrayList<>();
    List<Gap> gaps = new ArrayList<>();
    if (Files.size(source.file()) % SECTOR != 0)
      gaps.add(
          new Gap(Origin.ofDocument(source.path()), "cut short: its end is missing; get it again"));
    try (POIFSFileSystem files = new POIFSFileSystem(source.file().toFile(), true);
        HSSFWorkbook workbook = new HSSFWorkbook(files.getRoot(), false)) {
      for (int i = 0; i < workbook.getNumberOfSheets(); i++) {
        HSSFSheet sheet = workbook.getSheetAt(i);
        SheetGrid grid = new SheetGrid(source.path(), sheet.getSheetName());
        if (workbook.isSheetHidden(i)) grid.hide(SheetNotes.HIDDEN);
        if (workbook.isSheetVeryHidden(i)) grid.hide(SheetNotes.VERY_HIDDEN);
        fill(grid, sheet);
        blocks.add(grid.table());
        gaps.addAll(grid.gaps());
        addShapes(source.path(), sheet, blocks, gaps);
      }
    }
    return Document.read(source.path(), Format.XLS.shortName(), blocks, gaps);
  }

  private void fill(SheetGrid grid, HSSFSheet sheet) {
    XlsStrikes strikes = new XlsStrikes(sheet.getWorkbook());
    Map<CellAddress, HSSFComment> comments = new TreeMap<>(sheet.getCellComments());
    for (int column = 0; column < COLUMNS; column++) {
      if (sheet.isColumnHidden(column)) grid.hideColumns(column, column);
    }
    for (Row row : sheet) {
      grid.row(row.getRowNum() + 1, row.getZeroHeight());
      for (Cell cell : row) {
        String remark = remark(comments.remove(cell.getAddress()));
        MarkedText struck = strikes.in(cell, () -> text(grid, cell));
        if (struck == null) grid.cell(cell.getColumnIndex(), text(grid, cell), remark);
        else grid.marked(cell.getColumnIndex(), struck, remark);
      }
    }
    // Comments on empty cells come last, since the grid puts its rows in order.
    comments.forEach(
        (address, comment) -> {
          grid.row(address.getRow() + 1, false);
          grid.cell(address.getColumn(), "", remark(comment));
        });
    for (CellRangeAddress area : sheet.getMergedRegions()) {
      grid.merge(
          area.getFirstRow() + 1,
          area.getFirstColumn(),
          area.getLastRow() + 1,
          area.getLastColumn());
    }
  }

  private static String remark(HSSFComment comment) {
    if (comment == null) return "";
    return CleanText.of(OwnNotes.signed(text(comment), comment.getAuthor()));
  }

  private String text(SheetGrid grid, Cell cell) {
    CellType type = cell.getCellType();
    if (type == CellType.FORMULA) type = cell.getCachedFormulaResultType();
    if (type == CellType.ERROR) {
      String shown = FormulaError.forInt(cell.getErrorCellValue()).getString();
      grid.gap(cell.getRowIndex() + 1, cell.getColumnIndex(), shown, "the cell shows an error");
      return "";
    }
    return CleanText.of(formatter.formatCellValue(cell));
  }

  private static void addShapes(String path, HSSFSheet sheet, List<Block> blocks, List<Gap> gaps) {
    try {
      HSSFPatriarch drawing = sheet.getDrawingPatriarch();
      if (drawing == null) return;
      for (HSSFShape shape : drawing) addShape(path, sheet, shape, blocks);
    } catch (RuntimeException e) {
      // Drawings are the part of the old format that the library knows least.
      Origin origin = Origin.ofCell(path, sheet.getSheetName(), null, null);
      gaps.add(new Gap(origin, "its text boxes cannot be read"));
    }
  }

  private static void addShape(String path, HSSFSheet sheet, HSSFShape shape, List<Block> blocks) {
    if (shape instanceof HSSFShapeGroup group) {
      for (HSSFShape inner : group) addShape(path, sheet, inner, blocks);
    } else if (shape instanceof HSSFSimpleShape box && !(shape instanceof HSSFComment)) {
      String words = CleanText.of(text(box));
      if (!words.isEmpty()) blocks.add(note(path, sheet, shape, words));
    }
  }

  private static String text(HSSFSimpleShape box) {
    try {
      return box.getString() == null ? "" : box.getString().getString();
    } catch (NullPointerException e) {
      // What the library throws for a picture or a line, which have no text record.
      return "";
    }
  }

  private static Paragraph note(String path, HSSFSheet sheet, HSSFShape shape, String words) {
    HSSFAnchor anchor = shape.getAnchor();
    String cell =
        anchor instanceof HSSFClientAnchor a ? Table.address(a.getRow1() + 1, a.getCol1()) : null;
    Origin origin = Origin.ofCell(path, sheet.getSheetName(), cell, words);
    return new Paragraph(origin, "", 0, -1, words, Paragraph.Region.NOTE);
  }
}
