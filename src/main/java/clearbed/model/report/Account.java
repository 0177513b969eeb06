package clearbed.model.report;

import clearbed.model.document.Origin;
import java.util.List;

/**
 * What came of every sentence and every cell of a document: each is counted once.
 *
 * @param sentences of running text, and rows of tables that were not taken for schedules
 * @param cells with words in them, of tables that were
 * @param setAside one line for each reason and heading
 */
public record Account(
    Tally sentences,
    Tally cells,
    List<TableAccount> tables,
    List<Unread> unread,
    List<SetAside> setAside) {
  public static final Account NOTHING =
      new Account(Tally.NONE, Tally.NONE, List.of(), List.of(), List.of());

  public Account {
    tables = List.copyOf(tables);
    unread = List.copyOf(unread);
    setAside = List.copyOf(setAside);
  }

  /** How many ended in which way. */
  public record Tally(int read, int context, int setAside, int notUnderstood) {
    public static final Tally NONE = new Tally(0, 0, 0, 0);

    public int all() {
      return read + context + setAside + notUnderstood;
    }

    public int of(Fate fate) {
      return switch (fate) {
        case READ -> read;
        case CONTEXT -> context;
        case SET_ASIDE -> setAside;
        case NOT_UNDERSTOOD -> notUnderstood;
      };
    }

    public Tally plus(Tally other) {
      return new Tally(
          read + other.read,
          context + other.context,
          setAside + other.setAside,
          notUnderstood + other.notUnderstood);
    }

    public Tally plus(Fate fate) {
      return plus(
          new Tally(
              fate == Fate.READ ? 1 : 0,
              fate == Fate.CONTEXT ? 1 : 0,
              fate == Fate.SET_ASIDE ? 1 : 0,
              fate == Fate.NOT_UNDERSTOOD ? 1 : 0));
    }
  }

  /**
   * A table and what its columns were taken for.
   *
   * @param takenFor {@code schedule}, {@code rooms} or {@code none}
   */
  public record TableAccount(Origin origin, String takenFor, List<Column> columns) {
    public TableAccount {
      columns = List.copyOf(columns);
    }
  }

  /**
   * @param as the attribute, or {@code tag}, {@code material}, {@code surface}; empty when not
   *     understood
   * @param evidence on which it was taken so
   * @param unit named in the heading, or empty
   * @param could attributes that it might hold where it is not understood, the likeliest first
   * @param samples of a column that is not understood, two of its cells
   */
  public record Column(
      String heading,
      String as,
      String evidence,
      String unit,
      List<String> could,
      List<String> samples) {
    public Column {
      could = List.copyOf(could);
      samples = List.copyOf(samples);
    }
  }

  /**
   * Words that may state something and were not understood.
   *
   * @param article what they are reported under: a table or an article
   * @param attributes that they might state
   * @param likely those of them for which there is a value as well
   * @param tags of the tiles that they are about; empty for any
   * @param samples of a column, two of its cells
   */
  public record Unread(
      Origin origin,
      String article,
      String text,
      List<String> attributes,
      List<String> likely,
      List<String> tags,
      List<String> samples) {
    public Unread {
      attributes = List.copyOf(attributes);
      likely = List.copyOf(likely);
      tags = List.copyOf(tags);
      samples = List.copyOf(samples);
    }

    /** True when it may speak of that tile. */
    public boolean reaches(String tag) {
      return tags.isEmpty() || tags.contains(tag);
    }
  }

  /**
   * How one sentence or cell ended.
   *
   * @param text of the sentence or the cell
   * @param why it was set aside, or what a cell was read as; empty where nothing is to be said
   */
  public record Ending(Origin origin, String text, Fate fate, String why) {}

  /**
   * @param origin of the first
   */
  public record SetAside(Origin origin, String why, int count) {}
}
