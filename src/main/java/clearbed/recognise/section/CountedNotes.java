package clearbed.recognise.section;

import clearbed.model.document.Paragraph;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Marks that number the notes of a sheet, {@code T-01 SCOPE. ...}, {@code T-02 FLATNESS. ...}, or
 * the articles below lettered parts, {@code A.1 ...}, {@code B.2 TG-1, shower walls ...}, told from
 * marks of tiles: notes count up without a gap, and behind them stand titles of work, not what a
 * tile is; articles count under more than one letter, or have articles below them.
 */
public final class CountedNotes {
  /** Fewer might be a legend of tiles. */
  private static final int FEWEST = 5;

  private static final int FEWEST_HEADED = 3;

  /** So many in a row, each with a stop behind its number, are notes whatever they open with. */
  private static final int MANY = 8;

  private static final Pattern STOPPED = Pattern.compile("^[A-Z]\\d{1,2}[.:]\\s");

  private static final Pattern MARKED =
      Pattern.compile("^([A-Z]{1,3}[-.]?)(\\d{1,2})[.:]?\\s+(\\S.*)$", Pattern.DOTALL);

  /** Words in capitals that open a note; short ones ("AT THE SPA") count, too. */
  private static final Pattern TITLE = Pattern.compile("^[A-Z][A-Z' ,&/+-]{3,60}(?![a-z])");

  /** {@code B.2 Mortar}, {@code B.7.1 Epoxy}. */
  private static final Pattern LETTERED =
      Pattern.compile(
          "^(([A-Z])\\.(\\d{1,2})((?:\\.\\d{1,2}){0,3}))\\.?\\s+(\\S.*)$", Pattern.DOTALL);

  /** {@code 6 Movement joints}, {@code 6.0 GROUT}. */
  private static final Pattern NUMBERED =
      Pattern.compile("^(\\d{1,2})(?:\\.0?)?\\s+\\p{Lu}.{2,70}$");

  /** {@code A General} over {@code A1}. */
  private static final Pattern PARTED = Pattern.compile("^([A-Z])[.:]?\\s+(\\p{Lu}.{2,70})$");

  /** {@code TC-6 Grouting} over {@code TC-6.1}. */
  private static final Pattern HYPHENED =
      Pattern.compile("^([A-Z]{1,4}-\\d{1,2})\\.?\\s+(\\S.{2,70})$");

  /** Letters that each count so far make articles of what they count. */
  private static final int LETTERS = 2;

  private static final int COUNTS_TO = 3;

  private static final int OPENING = 40;

  private static final int LONGEST_TITLE = 60;

  private final Vocabulary vocabulary;

  public CountedNotes(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * @param at index of its paragraph
   * @param label the mark with its number, as typed
   * @param mark that it counts under, without the number
   * @param rest the words behind the number
   */
  private record CountedNote(int at, String label, String mark, int number, String rest) {}

  /** {@code A1}, {@code B1}: letters from A on that count so many paragraphs in all. */
  private static final Pattern OF_PARTS =
      Pattern.compile(
          "^([A-Z])(\\d{1,2})[.:]?(?:\\t|\\s{1,4})\\s*(\\p{Lu}\\S*\\s.*)$", Pattern.DOTALL);

  private static final int FEWEST_OF_PARTS = 8;

  /** Clauses that were struck out leave gaps in the count. */
  private static final int MOST_LEFT_OUT = 4;

  /** What a tile is called stands in so many characters. */
  private static final int CALLED = 20;

  /** The paragraphs, with the marks that number them as labels and no words. */
  public List<Paragraph> of(List<Paragraph> paragraphs) {
    List<Paragraph> out = new ArrayList<>(paragraphs);
    part(out);
    for (List<CountedNote> series : series(out)) {
      boolean notes = series.size() >= FEWEST && areNotes(series);
      boolean stopped = series.size() >= MANY && areStopped(out, series);
      boolean titles = series.size() >= FEWEST && areTitles(out, series);
      if (!notes && !stopped && !titles && !areArticles(out, series)) continue;
      for (CountedNote note : series)
        out.set(note.at(), labelled(out.get(note.at()), note, titles));
    }
    letter(out);
    entitle(out);
    return out;
  }

  /** "Part A: A1, A2 ...; Part B: B1, B2 ..." number clauses and mark no tiles. */
  private void part(List<Paragraph> paragraphs) {
    List<CountedNote> found = new ArrayList<>();
    char letter = 'A' - 1;
    int last = 0;
    int sentences = 0;
    for (int i = 0; i < paragraphs.size(); i++) {
      if (!paragraphs.get(i).label().isBlank()) continue;
      Matcher m = OF_PARTS.matcher(paragraphs.get(i).text());
      if (!m.matches()) continue;
      char now = m.group(1).charAt(0);
      int number = Integer.parseInt(m.group(2));
      boolean next = now == letter ? number > last && number <= last + MOST_LEFT_OUT : number == 1;
      if (!next || now < letter || now > letter + 1) return;
      letter = now;
      last = number;
      if (isSentence(m.group(3))) sentences++;
      found.add(new CountedNote(i, m.group(1) + number, m.group(1), number, m.group(3)));
    }
    boolean counts =
        letter >= 'A' + LETTERS - 1
            && found.size() >= FEWEST_OF_PARTS
            && sentences * 2 >= found.size();
    if (!counts) return;
    for (CountedNote note : found)
      paragraphs.set(note.at(), labelled(paragraphs.get(note.at()), note));
  }

  /** Labels what is counted under letters, where that counts articles. */
  private static void letter(List<Paragraph> paragraphs) {
    Map<String, Integer> reached = new HashMap<>();
    Set<String> parted = new HashSet<>();
    List<CountedNote> found = new ArrayList<>();
    for (int i = 0; i < paragraphs.size(); i++) {
      if (!paragraphs.get(i).label().isBlank()) continue;
      Matcher m = LETTERED.matcher(paragraphs.get(i).text());
      if (!m.matches()) continue;
      int number = Integer.parseInt(m.group(3));
      found.add(new CountedNote(i, m.group(1), m.group(2), number, m.group(5)));
      if (!m.group(4).isEmpty()) parted.add(m.group(2));
      reached.merge(m.group(2), number, (before, now) -> now == before + 1 ? now : before);
    }
    long counting = reached.values().stream().filter(to -> to >= COUNTS_TO).count();
    for (CountedNote note : found) {
      boolean article = counting >= LETTERS || parted.contains(note.mark());
      if (article) paragraphs.set(note.at(), labelled(paragraphs.get(note.at()), note));
    }
  }

  /** "6 Movement joints" is a title where "6.1 ..." comes at once. */
  private static void entitle(List<Paragraph> paragraphs) {
    for (int i = 0; i + 1 < paragraphs.size(); i++) {
      Paragraph p = paragraphs.get(i);
      if (p.headingLevel() > 0 || !p.label().isBlank()) continue;
      Paragraph next = paragraphs.get(i + 1);
      Matcher hyphened = HYPHENED.matcher(p.text());
      if (hyphened.matches() && next.text().startsWith(hyphened.group(1) + ".1")) {
        paragraphs.set(i, title(p, hyphened.group(1), hyphened.group(2)));
        continue;
      }
      Matcher parted = PARTED.matcher(p.text());
      if (parted.matches() && next.label().equals(parted.group(1) + "1")) {
        paragraphs.set(i, title(p, parted.group(1), parted.group(2)));
        continue;
      }
      Matcher m = NUMBERED.matcher(p.text());
      if (!m.matches()) continue;
      String first = m.group(1) + ".1";
      boolean opens = (next.label() + " " + next.text()).strip().startsWith(first + " ");
      if (opens || next.label().equals(first)) paragraphs.set(i, title(p, "", p.text()));
    }
  }

  /** Marks that count up by one, each series from 0 or 1 on. */
  private static List<List<CountedNote>> series(List<Paragraph> paragraphs) {
    List<List<CountedNote>> all = new ArrayList<>();
    Map<String, List<CountedNote>> open = new HashMap<>();
    for (int i = 0; i < paragraphs.size(); i++) {
      CountedNote note = note(paragraphs.get(i), i);
      if (note == null) continue;
      List<CountedNote> run = open.get(note.mark());
      boolean next = run != null && run.get(run.size() - 1).number() + 1 == note.number();
      if (!next && note.number() <= 1) all.add(run = new ArrayList<>());
      else if (!next) run = null;
      if (run != null) run.add(note);
      open.put(note.mark(), run);
    }
    return all;
  }

  private static CountedNote note(Paragraph p, int at) {
    if (!p.label().isBlank()) return null;
    Matcher m = MARKED.matcher(p.text());
    if (!m.matches()) return null;
    String label = m.group(1) + m.group(2);
    return new CountedNote(at, label, m.group(1), Integer.parseInt(m.group(2)), m.group(3));
  }

  /** Most open with a title, and hardly one with what a tile or another finish is. */
  private boolean areNotes(List<CountedNote> series) {
    int titled = 0;
    int products = 0;
    for (CountedNote note : series) {
      Matcher title = TITLE.matcher(note.rest());
      if (!title.find()) continue;
      titled++;
      if (isProduct(title.group())) products++;
    }
    if (titled * 3 >= series.size() * 2 && products * 4 <= series.size()) return true;
    boolean plain = series.get(0).mark().length() == 1 || series.size() >= MANY;
    return plain && saySomething(series);
  }

  /** "N4 Surfaces that receive tile shall be flat." is a note, "T4 Cast glass tile" no. */
  private boolean saySomething(List<CountedNote> series) {
    long sentences = series.stream().filter(note -> isSentence(note.rest())).count();
    long products =
        series.stream()
            .map(note -> note.rest().substring(0, Math.min(CALLED, note.rest().length())))
            .filter(this::isProduct)
            .count();
    return sentences * 3 >= series.size() * 2 && products * 4 <= series.size();
  }

  private static boolean isSentence(String text) {
    return text.endsWith(".") || text.endsWith(":");
  }

  /** "V9 Movement joints" over sentences, and hardly one says what a tile is. */
  private boolean areTitles(List<Paragraph> paragraphs, List<CountedNote> series) {
    int titles = 0;
    int products = 0;
    for (CountedNote note : series) {
      boolean over =
          note.at() + 1 < paragraphs.size() && isSentence(paragraphs.get(note.at() + 1).text());
      boolean title = note.rest().length() <= LONGEST_TITLE && !isSentence(note.rest());
      if (over && title) titles++;
      if (isProduct(note.rest())) products++;
    }
    return titles * 3 >= series.size() * 2 && products * 4 <= series.size();
  }

  /** {@code N1. ...}, {@code N2. ...}: one letter, and hardly one says what a tile is. */
  private boolean areStopped(List<Paragraph> paragraphs, List<CountedNote> series) {
    int products = 0;
    for (CountedNote note : series) {
      if (!STOPPED.matcher(paragraphs.get(note.at()).text()).lookingAt()) return false;
      String opening = note.rest().substring(0, Math.min(note.rest().length(), OPENING));
      if (vocabulary.glass().describesTile(opening) || vocabulary.list("otherFinish").in(opening))
        products++;
    }
    return products * 3 <= series.size();
  }

  /** Headings "C1 Glass tile", "C2 Backing", "C3 Grouting" that count up number the articles. */
  private boolean areArticles(List<Paragraph> paragraphs, List<CountedNote> series) {
    if (series.size() < FEWEST_HEADED) return false;
    int titled = 0;
    for (CountedNote note : series) {
      if (paragraphs.get(note.at()).headingLevel() == 0) return false;
      String family = vocabulary.family(note.rest());
      if (!family.isEmpty() && !family.equals("tile")) titled++;
    }
    return titled * 2 >= series.size();
  }

  private boolean isProduct(String title) {
    return TileWords.tile(title)
        || vocabulary.list("otherFinish").in(title)
        || vocabulary.glass().describesTile(title);
  }

  private static Paragraph title(Paragraph p, String label, String words) {
    return new Paragraph(p.origin(), label, 1, p.listLevel(), words, p.region());
  }

  private static Paragraph labelled(Paragraph p, CountedNote note) {
    return labelled(p, note, false);
  }

  private static Paragraph labelled(Paragraph p, CountedNote note, boolean title) {
    int level = title ? Math.max(1, p.headingLevel()) : p.headingLevel();
    return new Paragraph(p.origin(), note.label(), level, p.listLevel(), note.rest(), p.region());
  }
}
