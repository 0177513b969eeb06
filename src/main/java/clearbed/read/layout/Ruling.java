package clearbed.read.layout;

/** A straight drawn line, level or upright; points, y from the top. */
public record Ruling(double x0, double y0, double x1, double y1) {
  /** Lines drawn as thin boxes are no thicker than this. */
  private static final double THICKEST = 2.5;

  private static final double SHORTEST = 4;

  public boolean isLevel() {
    return y1 - y0 <= THICKEST && x1 - x0 >= SHORTEST;
  }

  public boolean isUpright() {
    return x1 - x0 <= THICKEST && y1 - y0 >= SHORTEST;
  }

  public double x() {
    return (x0 + x1) / 2;
  }

  public double y() {
    return (y0 + y1) / 2;
  }

  public static Ruling between(double ax, double ay, double bx, double by) {
    return new Ruling(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
  }
}
