package clearbed.recognise.section;

import clearbed.model.Paragraph;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
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

  /** The paragraphs, with the marks that number them as labels and no words. */
  public List<Paragraph> of(List<Paragraph> paragraphs) {
    List<Paragraph> out = new ArrayList<>(paragraphs);
    for (int i = 0; i < out.size(); i++) {
      List<Integer> series = series(out, i);
      if (series.size() >= FEWEST && areNotes(out, series))
        for (int at : series) out.set(at, labelled(out.get(at)));
    }
    return out;
  }

  /** The paragraphs from one on that count up by one each under one mark. */
  private static List<Integer> series(List<Paragraph> paragraphs, int from) {
    List<Integer> out = new ArrayList<>();
    Matcher first = marked(paragraphs.get(from));
    if (first == null || Integer.parseInt(first.group(2)) > 1) return out;
    int next = Integer.parseInt(first.group(2));
    for (int i = from; i < paragraphs.size(); i++) {
      Matcher m = marked(paragraphs.get(i));
      if (m == null || !m.group(1).equals(first.group(1))) continue;
      if (Integer.parseInt(m.group(2)) != next) break;
      out.add(i);
      next++;
    }
    return out;
  }

  private static Matcher marked(Paragraph p) {
    if (!p.label().isBlank()) return null;
    Matcher m = MARKED.matcher(p.text());
    return m.matches() ? m : null;
  }

  /** Most open with a title, and hardly one with what a tile or another finish is. */
  private boolean areNotes(List<Paragraph> paragraphs, List<Integer> series) {
    int titled = 0;
    int products = 0;
    for (int at : series) {
      Matcher title = TITLE.matcher(marked(paragraphs.get(at)).group(3));
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

  private static Paragraph labelled(Paragraph p) {
    Matcher m = marked(p);
    return new Paragraph(
        p.origin(),
        m.group(1) + m.group(2),
        p.headingLevel(),
        p.listLevel(),
        m.group(3),
        p.region());
  }
}
