package clearbed.report;

import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xddf.usermodel.PresetColor;
import org.apache.poi.xddf.usermodel.XDDFColor;
import org.apache.poi.xddf.usermodel.XDDFLineProperties;
import org.apache.poi.xddf.usermodel.XDDFShapeProperties;
import org.apache.poi.xddf.usermodel.XDDFSolidFillProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrosses;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.BarDirection;
import org.apache.poi.xddf.usermodel.chart.BarGrouping;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
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
final class Charts {
  /** Rows of a sheet, from 0, both included. */
  record Rows(int first, int last) {}

  /** The words on and behind a chart. */
  record Labels(String title, String horizontal, String vertical, String alt) {}

  private Charts() {}

  /** Stacked bars: names in column A, errors, warnings and notes in C, D and E. */
  static void bars(XSSFSheet sheet, Rows rows, int fromRow, int toRow, String alt) {
    XSSFChart chart = chart(sheet, 0, fromRow, SummarySheet.WIDTH, toRow, "Findings by check", alt);
    chart.setTitleText("Findings by check");
    chart.setTitleOverlay(false);
    chart.getOrAddLegend().setPosition(LegendPosition.BOTTOM);
    XDDFCategoryAxis names = chart.createCategoryAxis(AxisPosition.LEFT);
    XDDFValueAxis counts = chart.createValueAxis(AxisPosition.BOTTOM);
    counts.setCrosses(AxisCrosses.AUTO_ZERO);
    counts.setMajorUnit(unit(sheet, rows));
    counts.setNumberFormat("0");
    // A bar chart grows upwards; turned over, the worst check stands on top, as in the table.
    names.setOrientation(org.apache.poi.xddf.usermodel.chart.AxisOrientation.MAX_MIN);
    XDDFBarChartData data = (XDDFBarChartData) chart.createData(ChartTypes.BAR, names, counts);
    data.setBarDirection(BarDirection.BAR);
    data.setBarGrouping(BarGrouping.STACKED);
    data.setOverlap((byte) 100);
    data.setGapWidth(40);
    var checks = XDDFDataSourcesFactory.fromStringCellRange(sheet, range(rows, 0));
    int column = 2;
    for (SheetSetup.Tint tint : SheetSetup.LEVELS) {
      var values = XDDFDataSourcesFactory.fromNumericCellRange(sheet, range(rows, column++));
      XDDFChartData.Series series = data.addSeries(checks, values);
      series.setTitle(tint.word(), null);
      series.setShapeProperties(filled(tint.back()));
    }
    chart.plot(data);
  }

  /** A line through pairs of cells, and one point set apart. */
  static void curve(
      XSSFSheet sheet,
      Labels labels,
      Rows rows,
      int xColumn,
      Rows point,
      int fromColumn,
      int fromRow) {
    XSSFChart chart =
        chart(
            sheet, fromColumn, fromRow, fromColumn + 1, fromRow + 16, labels.title(), labels.alt());
    chart.setTitleText(labels.title());
    chart.setTitleOverlay(false);
    chart.getOrAddLegend().setPosition(LegendPosition.BOTTOM);
    XDDFValueAxis across = chart.createValueAxis(AxisPosition.BOTTOM);
    across.setTitle(labels.horizontal());
    XDDFValueAxis up = chart.createValueAxis(AxisPosition.LEFT);
    up.setTitle(labels.vertical());
    up.setCrosses(AxisCrosses.AUTO_ZERO);
    XDDFScatterChartData data =
        (XDDFScatterChartData) chart.createData(ChartTypes.SCATTER, across, up);
    data.setStyle(ScatterStyle.LINE_MARKER);
    data.setVaryColors(false);
    XDDFScatterChartData.Series line =
        (XDDFScatterChartData.Series)
            data.addSeries(numbers(sheet, rows, xColumn), numbers(sheet, rows, xColumn + 1));
    line.setTitle("required", null);
    line.setSmooth(false);
    line.setMarkerStyle(MarkerStyle.NONE);
    line.setShapeProperties(stroke("26415A"));
    XDDFScatterChartData.Series stated =
        (XDDFScatterChartData.Series)
            data.addSeries(numbers(sheet, point, xColumn), numbers(sheet, point, xColumn + 1));
    stated.setTitle("this entry", null);
    stated.setMarkerStyle(MarkerStyle.DIAMOND);
    stated.setMarkerSize((short) 12);
    stated.setShapeProperties(stroke("6E1A3B"));
    chart.plot(data);
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

  private static double unit(XSSFSheet sheet, Rows rows) {
    double most = 0;
    for (int row = rows.first(); row <= rows.last(); row++) {
      most = Math.max(most, sheet.getRow(row).getCell(5).getNumericCellValue());
    }
    return Math.max(1, Math.ceil(most / 10));
  }

  private static XDDFNumericalDataSource<Double> numbers(XSSFSheet sheet, Rows rows, int column) {
    return XDDFDataSourcesFactory.fromNumericCellRange(sheet, range(rows, column));
  }

  private static CellRangeAddress range(Rows rows, int column) {
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

  private static XDDFShapeProperties stroke(String hex) {
    XDDFShapeProperties properties = new XDDFShapeProperties();
    XDDFLineProperties line = new XDDFLineProperties(solid(hex));
    line.setWidth(2.0);
    properties.setLineProperties(line);
    return properties;
  }

  private static XDDFSolidFillProperties solid(String hex) {
    return new XDDFSolidFillProperties(XDDFColor.from(java.util.HexFormat.of().parseHex(hex)));
  }

  private static XDDFSolidFillProperties solid(PresetColor colour) {
    return new XDDFSolidFillProperties(XDDFColor.from(colour));
  }
}
