package clearbed.report.view;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.report.Account;
import clearbed.model.report.Fate;
import clearbed.recognise.text.PlainText;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** How the words of one document ended, read or not, by the places where they stand. */
final class Endings {
  private static final Pattern LETTER = Pattern.compile("\\(?[A-Za-z0-9]{1,3}[.)]");

  private static final Page.ShownRun NOTHING = new Page.ShownRun("", "", "");

  private final Map<PlaceKey, List<Account.Ending>> byPlace = new HashMap<>();

  Endings(List<Account.Ending> endings) {
    for (Account.Ending e : endings)
      byPlace.computeIfAbsent(PlaceKey.of(e.origin()), p -> new ArrayList<>()).add(e);
  }

  private List<Account.Ending> at(Origin origin) {
    return byPlace.getOrDefault(PlaceKey.of(origin), List.of());
  }

  /** The text cut where one ending gives way to the next. */
  List<Page.ShownRun> runs(String written, Origin origin) {
    String plain = PlainText.of(written);
    // Marks that are one character in either form stay as they were typed.
    String shown = plain.length() == written.length() ? written : plain;
    List<Page.ShownRun> out = new ArrayList<>();
    int from = 0;
    for (Account.Ending e : at(origin)) {
      int at = plain.indexOf(e.text(), from);
      if (at < 0) continue;
      String between = shown.substring(from, at);
      int end = at + e.text().length();
      // The letter of a clause is no sentence, whatever became of it.
      boolean letter = LETTER.matcher(e.text()).matches();
      String words = shown.substring(at, end);
      Page.ShownRun run =
          letter
              ? new Page.ShownRun("", words, "")
              : new Page.ShownRun(kind(e.fate()), words, why(e));
      Page.ShownRun last = out.isEmpty() ? NOTHING : out.get(out.size() - 1);
      boolean same =
          !out.isEmpty()
              && between.isBlank()
              && last.kind().equals(run.kind())
              && last.why().equals(run.why());
      if (same) {
        out.set(
            out.size() - 1,
            new Page.ShownRun(run.kind(), last.text() + between + run.text(), run.why()));
      } else {
        if (at > from) out.add(new Page.ShownRun("", between, ""));
        out.add(run);
      }
      from = end;
    }
    if (from < shown.length()) out.add(new Page.ShownRun("", shown.substring(from), ""));
    return out.stream()
        .map(r -> new Page.ShownRun(r.kind(), Shown.text(r.text()), r.why()))
        .toList();
  }

  private static String kind(Fate fate) {
    return switch (fate) {
      case READ -> "read";
      case CONTEXT -> "context";
      case SET_ASIDE -> "aside";
      case NOT_UNDERSTOOD -> "unread";
    };
  }

  private static String why(Account.Ending e) {
    String why = Shown.line(e.why());
    return switch (e.fate()) {
      case READ -> why.isEmpty() ? "read" : "read: " + why;
      case CONTEXT -> "context: heading, tag, place or unit of others";
      case SET_ASIDE -> "set aside: " + why;
      case NOT_UNDERSTOOD -> "not understood";
    };
  }

  /** A row that was read as a sentence ended as its words did, the worst of them. */
  Page.ShownRun ofRow(Table table, Table.Row row) {
    Account.Ending worst = null;
    for (Table.Cell cell : row.cells()) {
      if (cell.text().isBlank()) continue;
      for (Account.Ending e : at(table.origin(cell))) {
        boolean worse = worst == null || rank(e.fate()) > rank(worst.fate());
        if (!e.text().equals(cell.text()) && worse) worst = e;
      }
    }
    return worst == null ? NOTHING : new Page.ShownRun(kind(worst.fate()), "", why(worst));
  }

  private static int rank(Fate fate) {
    return switch (fate) {
      case SET_ASIDE -> 0;
      case CONTEXT -> 1;
      case READ -> 2;
      case NOT_UNDERSTOOD -> 3;
    };
  }

  /**
   * A cell ended by itself, or with its row.
   *
   * @param row as it ended
   */
  Page.ShownRun ofCell(Table.Cell cell, Origin origin, Page.ShownRun row) {
    if (cell.text().isBlank()) return NOTHING;
    List<Account.Ending> ended = at(origin);
    Account.Ending only = ended.size() == 1 ? ended.get(0) : null;
    boolean alone = only != null && only.text().equals(cell.text());
    return new Page.ShownRun(
        alone ? kind(only.fate()) : row.kind(),
        Shown.text(cell.text()),
        alone ? why(only) : row.why());
  }
}
