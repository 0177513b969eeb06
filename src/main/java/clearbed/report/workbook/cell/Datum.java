package clearbed.report.workbook.cell;

import clearbed.report.wording.SafeText;

/** What goes into one cell. */
public sealed interface Datum {
  /** The text that a reader sees. */
  String shown();

  record Text(String text) implements Datum {
    @Override
    public String shown() {
      return SafeText.of(text);
    }
  }

  record Count(int number) implements Datum {
    @Override
    public String shown() {
      return Integer.toString(number);
    }
  }

  /** A date, ISO 8601, or empty. */
  record Day(String date) implements Datum {
    @Override
    public String shown() {
      return date;
    }
  }

  /**
   * Text that leads to a place.
   *
   * @param address relative URI, or null for text without a link
   * @param location inside the file, such as {@code 'Tile'!B7}, or null
   */
  record Link(String text, String address, String location) implements Datum {
    @Override
    public String shown() {
      return SafeText.of(text);
    }
  }

  /** An empty cell, for people to fill in. */
  record Blank() implements Datum {
    @Override
    public String shown() {
      return "";
    }
  }
}
