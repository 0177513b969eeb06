package clearbed.report.teach;

import clearbed.base.DisplayText;
import clearbed.model.document.Origin;
import clearbed.model.report.Account;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.Stems;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What was not understood of all documents, each with the line that would teach it. */
final class Offers {
  private static final int MOST_WORDS = 8;
  private static final int LONGEST = 90;

  /** Evidence of columns that are understood to hold nothing that is asked for. */
  private static final Pattern SET_ASIDE =
      Pattern.compile("(?:former values|nothing that is asked for|taught: ).*");

  /** Figures, and whatever ends a phrase. */
  private static final Pattern APART = Pattern.compile("[^\\p{L}'\\s-]+|\\s-\\s|\\S*\\d\\S*");

  private static final Pattern LETTER = Pattern.compile("\\p{L}");

  private final Vocabulary vocabulary;
  private final Map<String, Offer> offers = new LinkedHashMap<>();

  private Offers(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** In the order of the documents; each word once. */
  static List<Offer> of(List<Facts> facts, Vocabulary vocabulary) {
    Offers out = new Offers(vocabulary);
    for (Facts each : facts) out.document(each);
    return List.copyOf(out.offers.values());
  }

  private void document(Facts facts) {
    Account account = facts.account();
    for (Account.TableAccount table : account.tables())
      if (table.takenFor().equals("none") && mayBeSchedule(table)) columns(table);
    for (Account.Unread unread : account.unread()) {
      if (unread.samples().isEmpty()) sentence(unread);
      else under(unread, account.tables());
    }
    for (ScheduleRow row : facts.rows()) if (!row.decided()) undecided(row);
  }

  private void add(Offer offer) {
    String key = offer.section() + " " + offer.words().toLowerCase(Locale.ROOT);
    offers.putIfAbsent(key, offer);
  }

  /** A table that holds marks of tiles, or names glass tile. */
  private boolean mayBeSchedule(Account.TableAccount table) {
    return table.columns().size() >= 3
        && table.columns().stream()
            .anyMatch(
                c ->
                    c.as().equals("tag")
                        || c.samples().stream().anyMatch(this::isTag)
                        || c.samples().stream().anyMatch(vocabulary.glass()::speaksOfTile));
  }

  private boolean isTag(String text) {
    return Tags.isMark(text) || vocabulary.taught().isTag(text);
  }

  private void columns(Account.TableAccount table) {
    for (Account.Column c : table.columns()) {
      boolean open = c.as().isEmpty() && !SET_ASIDE.matcher(c.evidence()).matches();
      if (!open || c.heading().isBlank()) continue;
      String said = c.samples().isEmpty() ? "" : "in a table not taken for a schedule; ";
      column(table.origin(), c.heading(), c, c.could(), c.samples(), said);
    }
  }

  /** Cells that were not understood, by the heading over them where there is one. */
  private void under(Account.Unread unread, List<Account.TableAccount> tables) {
    Account.Column column =
        tables.stream()
            .filter(t -> isIn(unread.origin(), t.origin()))
            .flatMap(t -> t.columns().stream())
            .filter(c -> c.heading().equals(unread.text()))
            .findFirst()
            .orElse(null);
    if (column != null && !column.as().isEmpty()) cells(unread, column);
    else if (unread.text().isBlank()) none(unread, "under no heading");
    else column(unread.origin(), unread.text(), column, attributes(unread), unread.samples(), "");
  }

  private static boolean isIn(Origin cell, Origin table) {
    return cell.document().equals(table.document())
        && String.valueOf(cell.sheet()).equals(String.valueOf(table.sheet()));
  }

  /** The likely ones first. */
  private static List<String> attributes(Account.Unread unread) {
    List<String> out = new ArrayList<>(unread.likely());
    for (String other : unread.attributes()) if (!out.contains(other)) out.add(other);
    return out;
  }

  private void column(
      Origin origin,
      String heading,
      Account.Column column,
      List<String> could,
      List<String> cells,
      String where) {
    boolean own = column != null && !column.samples().isEmpty();
    List<String> below = own ? column.samples() : cells;
    List<String> samples = below.stream().filter(s -> !s.equals(heading)).toList();
    boolean weighed = column != null && !column.could().isEmpty();
    List<String> best = weighed ? column.could() : could;
    String guess = Offer.UNKNOWN;
    String why = where + "nothing tells what it is";
    if (!samples.isEmpty() && samples.stream().allMatch(this::isTag)) {
      guess = "tag";
      why = where + "cells look like tags";
    } else if (!best.isEmpty()) {
      guess = measured(best.get(0), heading, column);
      String on = column == null || column.evidence().isEmpty() ? "" : column.evidence() + "; ";
      why = where + on + "perhaps " + labels(best);
    } else if (samples.stream().anyMatch(this::namesTile)) {
      guess = "material";
      why = where + "cells name tile";
    }
    add(new Offer(Offer.COLUMNS, heading, guess, origin.place(), samples, why));
  }

  private boolean namesTile(String text) {
    return vocabulary.glass().speaksOfTile(text)
        || vocabulary.glass().describesOtherTile(text).isPresent();
  }

  /** With the unit of the column where the heading does not name it. */
  private static String measured(String attribute, String heading, Account.Column column) {
    boolean named = column == null || column.unit().isEmpty() || heading.contains(column.unit());
    return named ? attribute : attribute + " in " + column.unit();
  }

  private String labels(List<String> attributes) {
    return attributes.stream().limit(3).map(vocabulary::label).collect(Collectors.joining(", or "));
  }

  /** Cells under a heading that is known: terms of its attribute. */
  private void cells(Account.Unread unread, Account.Column column) {
    Attribute of = vocabulary.attribute(column.as()).orElse(null);
    if (of != null && isMeasured(of) && column.unit().isEmpty()) {
      String guess = of.id() + " in " + Offer.UNKNOWN;
      String why = "read as " + of.label() + "; its figures may want a unit";
      String place = unread.origin().place();
      add(new Offer(Offer.COLUMNS, column.heading(), guess, place, unread.samples(), why));
      return;
    }
    if (of == null || of.kind() != Attribute.Kind.TERM) {
      none(unread, "under \"" + column.heading() + "\", which is " + named(column.as()));
      return;
    }
    for (String sample : unread.samples()) {
      String term = nearest(of, sample);
      String why =
          term.isEmpty()
              ? "one of " + String.join(", ", of.terms())
              : "a word of it is of " + term + "; else one of " + String.join(", ", of.terms());
      String guess = of.id() + " " + (term.isEmpty() ? Offer.UNKNOWN : term);
      Offer offer =
          new Offer(
              Offer.TERMS,
              sample,
              guess,
              unread.origin().place(),
              List.of(),
              "under \"" + column.heading() + "\", " + of.label() + "; " + why);
      add(offer);
    }
  }

  private static boolean isMeasured(Attribute a) {
    return a.kind() == Attribute.Kind.AMOUNT
        || a.kind() == Attribute.Kind.SIZE
        || a.kind() == Attribute.Kind.FLATNESS;
  }

  private String named(String as) {
    return vocabulary.attribute(as).map(Attribute::label).orElse(as);
  }

  /** The term of which most words stand in the text; empty for none. */
  private static String nearest(Attribute of, String text) {
    Set<String> stems = stems(text);
    String best = "";
    long most = 0;
    for (String term : of.terms()) {
      long shared = stems(term).stream().filter(stems::contains).count();
      if (shared > most) {
        best = term;
        most = shared;
      }
    }
    return best;
  }

  private static Set<String> stems(String text) {
    return Stems.of(text.replace('-', ' ')).stream()
        .map(Stems.Word::stem)
        .collect(Collectors.toSet());
  }

  private void sentence(Account.Unread unread) {
    String phrase = phrase(unread.text());
    List<String> could = attributes(unread);
    if (phrase.isEmpty() || could.isEmpty()) {
      none(unread, "");
      return;
    }
    Attribute best = best(unread);
    boolean term = best != null && best.kind() == Attribute.Kind.TERM;
    String guess =
        best == null ? Offer.UNKNOWN : term ? best.id() + " " + Offer.UNKNOWN : best.id();
    String why =
        "perhaps " + labels(could) + (term ? ": one of " + String.join(", ", best.terms()) : "");
    List<String> samples = List.of(DisplayText.shortened(unread.text(), LONGEST));
    add(new Offer(Offer.TERMS, phrase, guess, unread.origin().place(), samples, why));
  }

  /** Words that hold no value for anything are not guessed at: a wrong guess may be confirmed. */
  private Attribute best(Account.Unread unread) {
    return unread.likely().stream()
        .flatMap(id -> vocabulary.attribute(id).stream())
        .filter(a -> !a.family().equals("location"))
        .findFirst()
        .orElse(null);
  }

  /** The longest run of words without figures and stops, for a person to cut down. */
  private static String phrase(String sentence) {
    String best = "";
    for (String run : APART.split(sentence)) {
      String[] words = run.strip().split("\\s+");
      String some = String.join(" ", List.of(words).subList(0, Math.min(words.length, MOST_WORDS)));
      if (some.length() > best.length() && LETTER.matcher(some).find()) best = some;
    }
    return best.length() < 3 ? "" : best;
  }

  private void none(Account.Unread unread, String why) {
    List<String> samples =
        unread.samples().isEmpty()
            ? List.of(DisplayText.shortened(unread.text(), LONGEST))
            : unread.samples();
    String words = unread.origin().place() + " " + unread.text();
    add(new Offer(Offer.NONE, words, "", unread.origin().place(), samples, why));
  }

  /** A row of which nothing says whether it is glass. */
  private void undecided(ScheduleRow row) {
    String place = row.origin().place();
    String words = row.evidence();
    boolean said = !words.isBlank() && !words.equals("no material stated");
    if (said && words.length() <= LONGEST)
      add(new Offer(Offer.GLASS, words, "", place, List.of(row.tag()), "is this glass tile?"));
    boolean figured = row.tagged() && row.tag().length() <= 12 && row.tag().matches(".*\\d.*");
    if (!figured || Tags.isMark(row.tag()) || vocabulary.taught().isTag(row.tag())) return;
    String form = row.tag().replaceAll("\\d", "#");
    if (form.matches("[A-Za-z0-9#@ ./_-]{2,20}") && LETTER.matcher(form).find())
      add(
          new Offer(
              Offer.TAGS, form, "", place, List.of(row.tag()), "is this how tags are written?"));
  }
}
