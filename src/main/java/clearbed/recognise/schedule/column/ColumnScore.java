package clearbed.recognise.schedule.column;

/**
 * What speaks for one meaning of a column. The score is
 *
 * <pre>
 *   3 x what the heading says of it (0 to 1)
 * + 2 x what the cells say of it (-1 to 1)
 * + 0.5 where the unit is one of it, -1.5 where it is of something else
 * + 0.75 where the column before is of the same part of the work and the heading names none
 * </pre>
 */
record ColumnScore(double heading, double cells, double unit, double beside, String why) {
  private static final double HEADING = 3;
  private static final double CELLS = 2;

  ColumnScore beside(String family, double by) {
    String said = why + (why.isEmpty() ? "" : ", ") + "beside " + family;
    return new ColumnScore(heading, cells, unit, beside + by, said);
  }

  double sum() {
    return sum(heading, cells, unit, beside);
  }

  static double sum(double heading, double cells, double unit, double beside) {
    return HEADING * heading + CELLS * cells + unit + beside;
  }
}
