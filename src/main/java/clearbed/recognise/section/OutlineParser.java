package clearbed.recognise.section;

import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.section.outline.Leads;
import clearbed.recognise.section.outline.OtherMarks;
import clearbed.recognise.section.outline.SectionLines;
import clearbed.recognise.section.outline.SectionNumbers;
import clearbed.recognise.section.outline.Wordings;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.limit.LimitFinder;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Reads running text as sections: number and title, parts, articles, paragraphs, each with what it
 * stands under.
 */
public final class OutlineParser {
  private static final Pattern END =
      Pattern.compile("^END OF (?:SECTION|DOCUMENT).*", Pattern.CASE_INSENSITIVE);
  private static final Pattern FIRST_PART =
      Pattern.compile("^PART\\s+(?:1|I|ONE)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern FIRST_ARTICLE =
      Pattern.compile("^\\s*(?:1[.]0?1|1[.]|01|100|105|110)\\s+\\S");

  /** A part or a first article stands this close below the title of a section, in paragraphs. */
  private static final int OPENING_LINES = 4;

  private static final int LONGEST_TITLE = 80;
  private static final Pattern COUNTED = Pattern.compile("^\\d.*|^[A-Z]\\..*");

  private final Vocabulary vocabulary;
  private final Wordings wordings;
  private final Leads leads;
  private final SectionReader reader;

  public OutlineParser(Vocabulary vocabulary, StatementFinder finder) {
    LimitFinder limitFinder = new LimitFinder(vocabulary);
    this.vocabulary = vocabulary;
    this.wordings = new Wordings(vocabulary, finder, limitFinder);
    this.leads = new Leads(vocabulary);
    this.reader = new SectionReader(vocabulary, finder, limitFinder);
  }

  /** The title that runs in before the words of a paragraph; or empty. */
  public String runIn(String words) {
    return leads.runIn(words);
  }

  /**
   * The sections of a document; text before the first one, or of a document without any, is notes.
   *
   * @param sheets for each paragraph the tiles of the sheet that it stands on; empty for none
   * @param fileName gives the section number where the text does not
   * @param mark that figures have before their decimals
   */
  public List<Section> parse(
      List<Paragraph> paragraphs,
      List<Set<String>> sheets,
      String fileName,
      Origin origin,
      DecimalMark mark) {
    List<Section> sections = new ArrayList<>();
    OtherMarks others = OtherMarks.of(paragraphs);
    SectionLines lines = new SectionLines(vocabulary, wordings, others);
    Origin from = origin;
    boolean ended = false;
    for (int i = 0; i < paragraphs.size(); i++) {
      Paragraph p = paragraphs.get(i);
      if (p.region() == Paragraph.Region.HEADER || p.region() == Paragraph.Region.FOOTER) {
        lines.margin(p);
        continue;
      }
      String text = PlainText.of(p.text()).trim();
      if (p.region() == Paragraph.Region.COMMENT) {
        lines.remark(p, text);
        continue;
      }
      boolean free = lines.isEmpty() || ended;
      Optional<SectionNumbers.Opening> opening =
          lines.isEmpty() || others.entitle(text) ? SectionNumbers.bare(text) : Optional.empty();
      if (opening.isEmpty()) {
        int at = i;
        opening =
            SectionNumbers.called(text).filter(any -> free || opensSection(paragraphs, at, text));
      }
      boolean end = END.matcher(text).matches();
      ended = end || ended && text.isEmpty();
      if (opening.isPresent()) {
        reader.read(lines.text(from, fileName, false), mark).ifPresent(sections::add);
        String title = opening.get().title();
        if (title.isBlank() && i + 1 < paragraphs.size() && isTitle(paragraphs.get(i + 1)))
          title = PlainText.of(paragraphs.get(++i).text()).trim();
        lines = new SectionLines(vocabulary, wordings, others);
        from = p.origin().withText(p.text());
        lines.open(opening.get().number(), title);
      } else if (!end && !text.isEmpty()) {
        lines.add(p, text, sheets.get(i));
      }
    }
    reader.read(lines.text(from, fileName, false), mark).ifPresent(sections::add);
    return sections;
  }

  /**
   * "Section 12 36 61 - Simulated stone countertops, for SS-2" in a list of related work opens no
   * section: one that does is a heading, or a part or a first article follows.
   */
  private static boolean opensSection(List<Paragraph> paragraphs, int at, String text) {
    Paragraph p = paragraphs.get(at);
    if (p.headingLevel() > 0) return true;
    if (!p.label().isBlank() || text.endsWith(".")) return false;
    int seen = 0;
    for (int i = at + 1; i < paragraphs.size() && seen < OPENING_LINES; i++) {
      String next = PlainText.of(paragraphs.get(i).text()).trim();
      if (next.isEmpty()) continue;
      seen++;
      if (FIRST_PART.matcher(next).find()
          || FIRST_ARTICLE.matcher(paragraphs.get(i).label() + " " + next).find()) return true;
      if (SectionNumbers.called(next).isPresent()) return false;
    }
    return false;
  }

  /** Notes around a schedule, or beside it on the same document; null where there are none. */
  public Section notes(List<Paragraph> paragraphs, Origin origin, DecimalMark mark) {
    SectionLines lines = new SectionLines(vocabulary, wordings, OtherMarks.of(paragraphs));
    for (Paragraph p : paragraphs) {
      String text = PlainText.of(p.text()).trim();
      if (p.region() == Paragraph.Region.COMMENT) lines.remark(p, text);
      else lines.add(p, text, Set.of());
    }
    return reader.read(lines.text(origin, "", true), mark).orElse(null);
  }

  private static boolean isTitle(Paragraph p) {
    String text = p.text().trim();
    return text.length() < LONGEST_TITLE
        && !text.isEmpty()
        && !Wordings.opensPart(text)
        && !COUNTED.matcher(text).matches();
  }
}
