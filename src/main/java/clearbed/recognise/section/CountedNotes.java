package clearbed.recognise.section;

import clearbed.model.Paragraph;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Marks that number the notes of a sheet, {@code T-01 SCOPE. ...}, {@code T-02 FLATNESS. ...}, told
 * from marks of tiles: they count up without a gap, and behind them stand titles of work, not what
 * a tile is.
 */
public final class CountedNotes {
  /** Fewer might be a legend of tiles. */
  private static final int FEWEST = 5;

  private static final Pattern MARKED =
      Pattern.compile("^([A-Z]{1,3}[-.]?)(\\d{1,2})[.:]?\\s+(\\S.*)$", Pattern.DOTALL);

  /** Words in capitals that open a note; short ones ("AT THE SPA") count, too. */
  private static final Pattern TITLE = Pattern.compile("^[A-Z][A-Z' ,&/+-]{3,60}(?![a-z])");

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
  private record Note(int at, String label, String mark, int number, String rest) {}

  /** The paragraphs, with the marks that number them as labels and no words. */
  public List<Paragraph> of(List<Paragraph> paragraphs) {
    List<Paragraph> out = new ArrayList<>(paragraphs);
    for (List<Note> series : series(paragraphs)) {
      if (series.size() < FEWEST || !areNotes(series)) continue;
      for (Note note : series) out.set(note.at(), labelled(out.get(note.at()), note));
    }
    return out;
  }

  /** Marks that count up by one, each series from 0 or 1 on. */
  private static List<List<Note>> series(List<Paragraph> paragraphs) {
    List<List<Note>> all = new ArrayList<>();
    Map<String, List<Note>> open = new HashMap<>();
    for (int i = 0; i < paragraphs.size(); i++) {
      Note note = note(paragraphs.get(i), i);
      if (note == null) continue;
      List<Note> run = open.get(note.mark());
      boolean next = run != null && run.get(run.size() - 1).number() + 1 == note.number();
      if (!next && note.number() <= 1) all.add(run = new ArrayList<>());
      else if (!next) run = null;
      if (run != null) run.add(note);
      open.put(note.mark(), run);
    }
    return all;
  }

  private static Note note(Paragraph p, int at) {
    if (!p.label().isBlank()) return null;
    Matcher m = MARKED.matcher(p.text());
    if (!m.matches()) return null;
    String label = m.group(1) + m.group(2);
    return new Note(at, label, m.group(1), Integer.parseInt(m.group(2)), m.group(3));
  }

  /** Most open with a title, and hardly one with what a tile or another finish is. */
  private boolean areNotes(List<Note> series) {
    int titled = 0;
    int products = 0;
    for (Note note : series) {
      Matcher title = TITLE.matcher(note.rest());
      if (!title.find()) continue;
      titled++;
      if (isProduct(title.group())) products++;
    }
    return titled * 3 >= series.size() * 2 && products * 4 <= series.size();
  }

  private boolean isProduct(String title) {
    return TileWords.tile(title)
        || vocabulary.list("otherFinish").in(title)
        || vocabulary.describesGlassTile(title);
  }

  private static Paragraph labelled(Paragraph p, Note note) {
    return new Paragraph(
        p.origin(), note.label(), p.headingLevel(), p.listLevel(), note.rest(), p.region());
  }
}
