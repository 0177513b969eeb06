package clearbed.recognise.schedule.column;

import clearbed.base.Memo;
import clearbed.model.value.Unit;
import clearbed.recognise.schedule.cell.CellReading;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.HeadingEvidence.Heard;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** How well the cells of a column are values of each attribute, under its heading. */
final class CellFits {
  private static final double HINT_OF_COLOUR = 0.4;

  private static final double CLASS = 0.8;

  /** Cells that tell what a column of a finish schedule means for glass. */
  private static final int TELLING = 3;

  /** Of so many cells of other finishes one counts. */
  private static final int SILENT = 3;

  private final Vocabulary vocabulary;
  private final Memo<String, Set<String>> begun = Memo.ofTexts();

  /** The unit is that of the column, or null. */
  private record InColumn(String cell, Unit unit) {}

  private final Memo<InColumn, double[]> values = new Memo<>(InColumn::cell);

  /** Where an attribute stands among all, by its id. */
  private final Map<String, Integer> order = new HashMap<>();

  CellFits(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    for (Attribute a : vocabulary.attributes()) order.put(a.id(), order.size());
  }

  /** How well each cell is a value of each attribute. */
  double[][] of(
      List<CellReading> cells, List<Attribute> asked, ColumnWords w, Map<String, Heard> heard) {
    double[][] out = new double[asked.size()][cells.size()];
    String last = w.bottom().isEmpty() ? "" : HeadingWords.lastWord(w.bottom()) + " ";
    Set<String> begun = last.isEmpty() ? Set.of() : begun(last);
    List<double[]> values = cells.stream().map(cell -> values(cell, w.unit())).toList();
    for (int i = 0; i < out.length; i++) {
      Attribute a = asked.get(i);
      Heard by = heard.get(a.id());
      double heading = by == null ? 0 : by.strength();
      boolean classes = begun.contains(a.id());
      int at = order.get(a.id());
      for (int c = 0; c < out[i].length; c++) {
        out[i][c] = fits(cells.get(c), values.get(c)[at], a, heading, last, classes);
      }
    }
    return out;
  }

  /** How well a cell is a value of each attribute, whatever its heading says. */
  private double[] values(CellReading cell, Unit unit) {
    return values.get(
        new InColumn(cell.text(), unit),
        () -> {
          CellReading.Measured measured = cell.under(unit);
          return vocabulary.attributes().stream().mapToDouble(measured::fits).toArray();
        });
  }

  /** The attributes of which a term may begin so. */
  private Set<String> begun(String start) {
    return begun.get(
        start,
        () ->
            vocabulary.attributes().stream()
                .filter(a -> a.kind() == Attribute.Kind.TERM && a.mayBeginTerm(start))
                .map(Attribute::id)
                .collect(Collectors.toSet()));
  }

  /**
   * "50" under "Class" is "Class 50".
   *
   * @param fits how well the cell is a value of the attribute by itself
   * @param last word of the heading with a blank behind it, or empty
   * @param classes true where a term of the attribute may begin so
   */
  private static double fits(
      CellReading cell, double fits, Attribute a, double heading, String last, boolean classes) {
    // Any words might be a colour, where the heading says that they are.
    if (fits == CellReading.MAYBE && a.id().endsWith(".colour") && heading < HINT_OF_COLOUR)
      return 0;
    boolean letters =
        a.kind() == Attribute.Kind.TERM && cell.text().length() <= CellReading.LONGEST_CLASS;
    if (fits > 0 || !letters || last.isEmpty()) return fits;
    boolean is = cell.named().contains(a.id()) || classes && a.isTerm(last + cell.text());
    return is ? CLASS : fits;
  }

  /**
   * "Translucent ice", "Opaque sage" among "Gloss white" and "Honed black": the rows of other
   * finishes say nothing of what a column means for glass. A third of such cells counts.
   */
  static double[] ofTiles(Attribute a, double[] fits) {
    boolean glass = a.kind() == Attribute.Kind.TERM && a.family().equals("tile");
    long say = glass ? Arrays.stream(fits).filter(fit -> fit > 0).count() : 0;
    if (say < TELLING || Arrays.stream(fits).anyMatch(fit -> fit < 0)) return fits;
    int silent = (int) (fits.length - say) / SILENT;
    double[] out = new double[(int) say + silent];
    int next = 0;
    for (double fit : fits) if (fit > 0) out[next++] = fit;
    return out;
  }
}
