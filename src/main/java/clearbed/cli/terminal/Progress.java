package clearbed.cli.terminal;

import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** What a run is at, on a terminal: a bar that stays from the first document to the last output. */
public final class Progress implements AutoCloseable {
  private final ProgressBar bar;

  private Progress(ProgressBar bar) {
    this.bar = bar;
  }

  /** A bar on a terminal, or none. */
  public static Progress on(boolean wanted) {
    return on(wanted, "Reading", "documents");
  }

  /**
   * The same of something else.
   *
   * @param unit what is counted
   */
  public static Progress on(boolean wanted, String task, String unit) {
    if (!wanted || !Terminal.interactive()) return new Progress(null);
    return new Progress(
        new ProgressBarBuilder()
            .setTaskName(task)
            .setStyle(ProgressBarStyle.ASCII)
            .setInitialMax(-1)
            .setUnit(" " + unit, 1)
            .clearDisplayOnFinish()
            .build());
  }

  /** How many documents there will be, as far as that is known. */
  public void expect(int documents) {
    if (bar != null && documents > 0) bar.maxHint(documents);
  }

  /** One more document was read. */
  public void read() {
    if (bar == null) return;
    bar.step();
    // Archives within archives are counted when they are opened.
    if (bar.getMax() > 0 && bar.getCurrent() > bar.getMax()) bar.maxHint(bar.getCurrent());
  }

  /** What is done once all is read: {@code checking}. */
  public void now(String what) {
    if (bar != null) bar.setExtraMessage(" " + what);
  }

  @Override
  public void close() {
    if (bar != null) bar.close();
  }
}
