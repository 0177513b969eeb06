package clearbed.recognise;

import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * A log of questions and answers. What was asked states nothing; what was answered is said of the
 * tiles that it names, or that the question names.
 */
final class AnsweredTable {
  private static final Pattern YES_OR_NO =
      Pattern.compile("^(?:yes|no|correct|confirmed|agreed)[.,;:]\\s+", Pattern.CASE_INSENSITIVE);

  /** "7", "Q7", "TQ-07". */
  private static final Pattern NUMBER = Pattern.compile("(?:\\p{Lu}{1,3}[-. ]?)?\\d{1,3}\\.?");

  /** The names of the columns stand in one of so many rows. */
  private static final int TITLES = 6;

  private static final int LONGEST_NAME = 50;

  /** What a heading says of its column in brackets. */
  private static final Pattern REMARK = Pattern.compile("\\s*[\\[(][^\\[\\]()]*[\\])]$");

  private AnsweredTable() {}

  /** Its answers as paragraphs; empty where it is no such table. */
  static List<Paragraph> answers(Table table, Vocabulary vocabulary) {
    for (int i = 0; i < Math.min(TITLES, table.rows().size()); i++) {
      Table.Row names = table.rows().get(i);
      int asked = column(names, vocabulary, "schedule.questioned");
      int answered = column(names, vocabulary, "schedule.answered");
      if (asked < 0 || answered < 0) continue;
      return below(table, i, answered);
    }
    return List.of();
  }

  /**
   * The column under one of the words, or under "Answer (part of the contract)" or "Answer by the
   * engineer" where there is none; -1 where there is neither.
   */
  private static int column(Table.Row names, Vocabulary vocabulary, String list) {
    Phrases words = vocabulary.list(list);
    int opens = -1;
    for (Table.Cell cell : names.cells()) {
      String name = PlainText.of(cell.text()).strip().toLowerCase(Locale.ROOT);
      String bare = REMARK.matcher(name).replaceFirst("");
      if (words.matches(bare)) return cell.column();
      boolean heads = bare.length() <= LONGEST_NAME && words.startsAt(bare, 0);
      if (opens < 0 && heads) opens = cell.column();
    }
    return opens;
  }

  private static List<Paragraph> below(Table table, int names, int answered) {
    List<Paragraph> out = new ArrayList<>();
    for (Table.Row row : table.rows().subList(names + 1, table.rows().size())) {
      Table.Cell cell = row.at(answered);
      if (cell == null || !cell.hasOwnWords()) continue;
      String answer = YES_OR_NO.matcher(cell.text().strip()).replaceFirst("");
      String about = about(row, answered);
      // "Shower floors are PT-1. Glass tile GT-2 is on the walls" is of two.
      for (Sentences.Sentence sentence : Sentences.of(answer)) {
        Set<String> own = tags(sentence.text());
        if (!own.isEmpty()) about = String.join(", ", own) + ": ";
        String text = (own.isEmpty() ? about : "") + sentence.text().strip();
        Origin at = table.origin(cell).withText(text);
        out.add(new Paragraph(at, number(row), 0, -1, text, Paragraph.Region.BODY));
      }
    }
    return out;
  }

  /** By which the log counts the question: what an answer adds has a place to call it by. */
  private static String number(Table.Row row) {
    String first = PlainText.of(row.cells().get(0).text()).strip();
    return NUMBER.matcher(first).matches() ? first.replaceAll("\\.?$", ".") : "";
  }

  /** The tiles that the rest of the row names: "GT-1, GT-2: ". */
  private static String about(Table.Row row, int answered) {
    Set<String> tags = new TreeSet<>();
    for (Table.Cell cell : row.cells())
      if (cell.column() > 0 && cell.column() != answered) tags.addAll(tags(cell.text()));
    return tags.isEmpty() ? "" : String.join(", ", tags) + ": ";
  }

  private static Set<String> tags(String text) {
    String plain = PlainText.of(text);
    Set<String> keys = TagFinder.tags(plain);
    Set<String> out = new TreeSet<>();
    for (String key : keys) out.add(Tags.asWritten(key, plain));
    return out;
  }
}
