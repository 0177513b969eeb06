package clearbed.report.workbook.cell;

import java.util.HexFormat;
import java.util.List;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xddf.usermodel.PresetColor;
import org.apache.poi.xddf.usermodel.XDDFColor;
import org.apache.poi.xddf.usermodel.XDDFFillProperties;
import org.apache.poi.xddf.usermodel.XDDFLineProperties;
import org.apache.poi.xddf.usermodel.XDDFNoFillProperties;
import org.apache.poi.xddf.usermodel.XDDFShapeProperties;
import org.apache.poi.xddf.usermodel.XDDFSolidFillProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrosses;
import org.apache.poi.xddf.usermodel.chart.AxisOrientation;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.BarDirection;
import org.apache.poi.xddf.usermodel.chart.BarGrouping;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.DisplayBlanks;
import org.apache.poi.xddf.usermodel.chart.LegendPosition;
import org.apache.poi.xddf.usermodel.chart.MarkerStyle;
import org.apache.poi.xddf.usermodel.chart.ScatterStyle;
import org.apache.poi.xddf.usermodel.chart.XDDFBarChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFCategoryAxis;
import org.apache.poi.xddf.usermodel.chart.XDDFChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFNumericalDataSource;
import org.apache.poi.xddf.usermodel.chart.XDDFScatterChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFGraphicFrame;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** Charts over cells of the workbook, each with its content in words beside it. */
public final class Charts {
  /** Rows of a sheet, from 0, both included. */
  public record ChartRows(int first, int last) {}

  /** The words on and behind a chart. */
  public record Labels(String title, String horizontal, String vertical, String point, String alt) {
    /** The same where people typed other inputs than the documents have. */
    public Labels ofTyped() {
      return new Labels(
          title,
          horizontal,
          vertical,
          "this tile, with inputs that were typed",
          alt + " That is by the documents; other inputs were typed.");
    }
  }

  /** Rows of a sheet that a curve covers. */
  public static final int CURVE_ROWS = 15;

  /** Columns of a page that bars cover. */
  private static final int BAR_COLUMNS = 8;

  private Charts() {}

  /** Stacked bars: names in column A, errors, warnings and notes in C, D and E. */
  public static void bars(XSSFSheet sheet, ChartRows rows, int fromRow, int toRow, String alt) {
    bars(sheet, rows, fromRow, toRow, new Bars("Findings by check", SheetSetup.LEVELS, alt));
  }

  /** What bars are called, and the words and colours of their parts. */
  public record Bars(String title, List<SheetSetup.Tint> parts, String alt) {}

  /** Stacked bars: names in column A, three numbers in C, D and E, and all of them in F. */
  public static void bars(XSSFSheet sheet, ChartRows rows, int fromRow, int toRow, Bars bars) {
    String words = bars.title();
    XSSFChart chart = chart(sheet, 0, fromRow, BAR_COLUMNS, toRow, words, bars.alt());
    title(chart, words);
    chart.getOrAddLegend().setPosition(LegendPosition.BOTTOM);
    XDDFCategoryAxis names = chart.createCategoryAxis(AxisPosition.LEFT);
    XDDFValueAxis counts = chart.createValueAxis(AxisPosition.BOTTOM);
    counts.setCrosses(AxisCrosses.MAX);
    counts.setMajorUnit(unit(sheet, rows));
    counts.setNumberFormat("0");
    // A bar chart grows upwards; turned over, the worst check stands on top, as in the table.
    names.setOrientation(AxisOrientation.MAX_MIN);
    XDDFBarChartData data = (XDDFBarChartData) chart.createData(ChartTypes.BAR, names, counts);
    data.setBarDirection(BarDirection.BAR);
    data.setBarGrouping(BarGrouping.STACKED);
    data.setOverlap((byte) 100);
    data.setGapWidth(40);
    var checks = XDDFDataSourcesFactory.fromStringCellRange(sheet, range(rows, 0));
    int column = 2;
    for (SheetSetup.Tint tint : bars.parts()) {
      var values = XDDFDataSourcesFactory.fromNumericCellRange(sheet, range(rows, column++));
      XDDFChartData.Series series = data.addSeries(checks, values);
      series.setTitle(tint.word(), null);
      series.setShapeProperties(filled(tint.back()));
    }
    chart.plot(data);
  }

  /**
   * A line through the cells of columns A and B, and one point of column C in the row below them;
   * drawn beside the cells, over the two columns of words.
   *
   * @param cells where the rows are: the sheet's streaming twin
   */
  public static void curve(
      XSSFSheet sheet, Sheet cells, Labels labels, ChartRows rows, int fromRow) {
    XSSFChart chart =
        chart(sheet, 4, fromRow, 6, fromRow + CURVE_ROWS, labels.title(), labels.alt());
    title(chart, labels.title());
    chart.getOrAddLegend().setPosition(LegendPosition.BOTTOM);
    chart.displayBlanksAs(DisplayBlanks.GAP);
    XDDFValueAxis across = chart.createValueAxis(AxisPosition.BOTTOM);
    across.setTitle(labels.horizontal());
    XDDFValueAxis up = chart.createValueAxis(AxisPosition.LEFT);
    up.setTitle(labels.vertical());
    up.setCrosses(AxisCrosses.AUTO_ZERO);
    XDDFScatterChartData data =
        (XDDFScatterChartData) chart.createData(ChartTypes.SCATTER, across, up);
    data.setStyle(ScatterStyle.LINE_MARKER);
    data.setVaryColors(false);
    series(data, cells, rows, 1, "required").setMarkerStyle(MarkerStyle.NONE);
    data.getSeries(0).setShapeProperties(line(solid("26415A"), 2));
    ChartRows withPoint = new ChartRows(rows.first(), rows.last() + 1);
    XDDFScatterChartData.Series point = series(data, cells, withPoint, 2, labels.point());
    point.setMarkerStyle(MarkerStyle.DIAMOND);
    point.setMarkerSize((short) 12);
    point.setShapeProperties(line(new XDDFNoFillProperties(), 2));
    chart.plot(data);
    var marker =
        chart.getCTChart().getPlotArea().getScatterChartArray(0).getSerArray(1).getMarker();
    marker.addNewSpPr().addNewSolidFill().addNewSrgbClr().setVal(HexFormat.of().parseHex("6E1A3B"));
  }

  private static XDDFScatterChartData.Series series(
      XDDFScatterChartData data, Sheet sheet, ChartRows rows, int column, String name) {
    var series =
        (XDDFScatterChartData.Series)
            data.addSeries(numbers(sheet, rows, 0), numbers(sheet, rows, column));
    series.setTitle(name, null);
    series.setSmooth(false);
    return series;
  }

  private static void title(XSSFChart chart, String words) {
    chart.setTitleText(words);
    chart.setTitleOverlay(false);
    chart.getTitle().getBody().getParagraph(0).getTextRuns().forEach(run -> run.setFontSize(11.0));
  }

  private static XSSFChart chart(
      XSSFSheet sheet, int column, int row, int toColumn, int toRow, String name, String alt) {
    XSSFDrawing drawing = sheet.createDrawingPatriarch();
    XSSFClientAnchor anchor = drawing.createAnchor(0, 0, 0, 0, column, row, toColumn, toRow);
    XSSFChart chart = drawing.createChart(anchor);
    XSSFGraphicFrame frame = chart.getGraphicFrame();
    var properties = frame.getCTGraphicalObjectFrame().getNvGraphicFramePr().getCNvPr();
    properties.setName(name);
    properties.setDescr(alt);
    return chart;
  }

  private static double unit(XSSFSheet sheet, ChartRows rows) {
    double most = 0;
    for (int row = rows.first(); row <= rows.last(); row++) {
      most = Math.max(most, sheet.getRow(row).getCell(5).getNumericCellValue());
    }
    return Math.max(1, Math.ceil(most / 10));
  }

  /** The numbers as they stand in the cells; to have them computed takes as long as all else. */
  private static XDDFNumericalDataSource<Double> numbers(Sheet sheet, ChartRows rows, int column) {
    Double[] numbers = new Double[rows.last() - rows.first() + 1];
    for (int i = 0; i < numbers.length; i++) {
      Cell cell = sheet.getRow(rows.first() + i).getCell(column);
      if (cell.getCellType() != CellType.BLANK) numbers[i] = cell.getNumericCellValue();
    }
    String reference = range(rows, column).formatAsString(sheet.getSheetName(), true);
    return XDDFDataSourcesFactory.fromArray(numbers, reference, column);
  }

  private static CellRangeAddress range(ChartRows rows, int column) {
    return new CellRangeAddress(rows.first(), rows.last(), column, column);
  }

  private static XDDFShapeProperties filled(String hex) {
    XDDFShapeProperties properties = new XDDFShapeProperties();
    properties.setFillProperties(solid(hex));
    XDDFLineProperties edge = new XDDFLineProperties(solid(PresetColor.DIM_GRAY));
    edge.setWidth(0.5);
    properties.setLineProperties(edge);
    return properties;
  }

  private static XDDFShapeProperties line(XDDFFillProperties fill, double width) {
    XDDFShapeProperties properties = new XDDFShapeProperties();
    XDDFLineProperties line = new XDDFLineProperties(fill);
    line.setWidth(width);
    properties.setLineProperties(line);
    return properties;
  }

  private static XDDFSolidFillProperties solid(String hex) {
    return new XDDFSolidFillProperties(XDDFColor.from(HexFormat.of().parseHex(hex)));
  }

  private static XDDFSolidFillProperties solid(PresetColor colour) {
    return new XDDFSolidFillProperties(XDDFColor.from(colour));
  }
}
