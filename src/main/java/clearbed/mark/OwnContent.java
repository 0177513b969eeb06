package clearbed.mark;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * Knows outputs of ours by their words, in whatever format they come back: printed to PDF, saved as
 * another kind of workbook, changed, or copied into a document of somebody else.
 */
public final class OwnContent {
  private static final String LETTER = OwnOutput.NOT_READ + ": letter of questions";
  private static final String LIST = OwnOutput.NOT_READ + ": list of findings";
  private static final String VIEW = OwnOutput.NOT_READ + ": page of documents and findings";
  private static final String SHEET = "copied from a findings workbook, not read";

  /** Titles stand no further down. */
  private static final int TITLES = 30;

  private static final Pattern BULLET = Pattern.compile("^[-*\u2022]\\s+");
  private static final Pattern NUMBERED_NOTE =
      Pattern.compile("(?:\\d+\\. )?(?:ERROR|WARNING|NOTE) [a-z]+(?:-[a-z0-9]+)*");

  private final Document document;
  private final Set<Integer> own = new TreeSet<>();
  private boolean ledger;
  private boolean bookTitle;
  private boolean letterTitle;
  private boolean listTitle;
  private boolean viewTitle;
  private boolean viewDecides;
  private boolean otherWords;
  private int notes;
  private int places;
  private int reasons;
  private int wordings;

  private OwnContent(Document document) {
    this.document = document;
  }

  /** The document as it is to be taken: as it was read, without sheets of ours, or not at all. */
  public static Document leftOut(Document read) {
    OwnContent content = new OwnContent(read);
    for (int i = 0; i < read.blocks().size(); i++) content.look(i, read.blocks().get(i));
    String reason = content.reason();
    if (reason != null) return Document.ignored(read.path(), read.format(), reason);
    return content.own.isEmpty() ? read : content.others();
  }

  private void look(int at, Block block) {
    if (block instanceof Paragraph paragraph) {
      look(paragraph.text(), at < TITLES);
      otherWords |= paragraph.region() == Paragraph.Region.BODY;
    } else if (block instanceof Table table) {
      if (isOwn(table)) own.add(at);
      else otherWords |= !table.rows().isEmpty();
    }
  }

  private void look(String text, boolean top) {
    String words = BULLET.matcher(text).replaceFirst("");
    if (words.startsWith(LetterWords.PLACE + ": ")) places++;
    else if (words.startsWith(LetterWords.WHY + ": ")) reasons++;
    else if (words.startsWith(LetterWords.FOUND + ": ")) reasons++;
    else if (words.startsWith(LetterWords.WORDING + ": ")) wordings++;
    else if (NUMBERED_NOTE.matcher(words).lookingAt()) notes++;
    if (!top) return;
    bookTitle |= words.startsWith(FindingsSheets.TITLE);
    letterTitle |= words.equals(LetterWords.TITLE);
    listTitle |= words.startsWith(ListWords.TITLE);
    viewTitle |= words.equals(ViewWords.TITLE);
    viewDecides |= words.startsWith(ViewWords.DECIDES);
  }

  private boolean isOwn(Table table) {
    int rows = 0;
    for (Table.Row row : table.rows()) {
      if (rows++ > FindingsSheets.DEEPEST_HEADING) return false;
      List<String> cells = new ArrayList<>();
      for (Table.Cell cell : row.cells()) cells.add(cell.text());
      if (cells.isEmpty()) continue;
      ledger |= cells.get(0).startsWith(FindingsSheets.LEDGER_NOTE);
      if (FindingsSheets.isHeading(cells)) return true;
      if (cells.get(0).startsWith(FindingsSheets.CALCULATIONS)) return true;
      if (rows <= 2 && cells.get(0).equals(FindingsSheets.TITLE)) return bookTitle = true;
    }
    return ledger;
  }

  /** Null for a document of the project. */
  private String reason() {
    if (viewTitle && viewDecides) return VIEW;
    boolean several = own.size() > 1 || own.size() == 1 && (bookTitle || !otherWords);
    if (ledger || several) return OwnOutput.IN_WORK;
    boolean asks = reasons > 0 && wordings > 0;
    if (asks && (letterTitle || places > 1 && reasons > 1 && wordings > 1)) return LETTER;
    return listTitle && notes > 0 ? LIST : null;
  }

  private Document others() {
    List<Block> blocks = new ArrayList<>();
    List<Gap> gaps = new ArrayList<>(document.gaps());
    for (int i = 0; i < document.blocks().size(); i++) {
      Block block = document.blocks().get(i);
      if (own.contains(i)) gaps.add(new Gap(block.origin(), SHEET));
      else blocks.add(block);
    }
    return new Document(
        document.path(),
        document.format(),
        Document.Status.PARTLY,
        document.reason(),
        blocks,
        gaps);
  }
}
