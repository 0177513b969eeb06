package clearbed.read.markup;

import clearbed.base.Cancellation;
import clearbed.read.block.CleanText;
import clearbed.read.block.Mark;
import clearbed.read.block.MarkedText;
import clearbed.read.source.Source;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.apache.poi.hwpf.HWPFDocument;
import org.apache.poi.hwpf.usermodel.CharacterRun;
import org.apache.poi.hwpf.usermodel.Notes;
import org.apache.poi.hwpf.usermodel.Paragraph;
import org.apache.poi.hwpf.usermodel.Range;
import org.apache.poi.poifs.filesystem.DirectoryNode;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/**
 * What an old Word file says of its words and the library that reads it keeps to itself: tracked
 * changes, hidden text, and where notes and comments are called.
 */
final class DocMarks {
  /** Of the lengths of footnotes, comments and endnotes in the file's head ([MS-DOC] 2.5.4). */
  private static final int[] LENGTHS = {0x50, 0x5C, 0x60};

  /** Deleted, inserted, hidden, struck through twice: properties switched on ([MS-DOC] 2.6.1). */
  private static final byte[][] PROPERTIES = {
    {0x00, 0x08}, {0x01, 0x08}, {0x3C, 0x08}, {0x53, 0x2A}
  };

  private static final char NOTE = '\u0002';
  private static final char COMMENT = '\u0005';
  private static final char CODE = '\u0013';
  private static final char RESULT = '\u0014';
  private static final char FIELD_END = '\u0015';

  private final List<Told> paragraphs = new ArrayList<>();
  private final List<DocNote> asides = new ArrayList<>();

  /**
   * A paragraph of the text, with the marks on its words; those that are struck through once are
   * left out, for these the library tells.
   *
   * @param shown the words that the library takes for text
   */
  record Told(MarkedText text, String shown, List<DocNote> asides) {}

  /**
   * A note or a comment.
   *
   * @param lines as the library gives them
   */
  public record DocNote(String part, List<String> lines) {}

  List<Told> paragraphs() {
    return paragraphs;
  }

  /** In the order of the file: footnotes, comments, endnotes. */
  List<DocNote> asides() {
    return asides;
  }

  /** Null for a file that has nothing of the kind. */
  static DocMarks of(Source source) throws IOException {
    try (POIFSFileSystem files = new POIFSFileSystem(source.file().toFile(), true)) {
      DirectoryNode root = files.getRoot();
      byte[] head = stream(root, "WordDocument");
      boolean any = hasLength(head) || hasProperty(head);
      for (String table : new String[] {"0Table", "1Table"}) {
        any = any || root.hasEntry(table) && hasProperty(stream(root, table));
      }
      if (!any) return null;
      try (HWPFDocument word = new HWPFDocument(root)) {
        DocMarks marks = new DocMarks();
        marks.read(word);
        return marks;
      }
    }
  }

  private static byte[] stream(DirectoryNode root, String name) throws IOException {
    try (InputStream in = root.createDocumentInputStream(name)) {
      return in.readAllBytes();
    }
  }

  private static boolean hasLength(byte[] head) {
    for (int at : LENGTHS) {
      for (int i = at; i < at + 4 && i < head.length; i++) if (head[i] != 0) return true;
    }
    return false;
  }

  private static boolean hasProperty(byte[] bytes) {
    for (int i = 0; i + 2 < bytes.length; i++) {
      if (bytes[i + 2] != 1) continue;
      for (byte[] property : PROPERTIES) {
        if (bytes[i] == property[0] && bytes[i + 1] == property[1]) return true;
      }
    }
    return false;
  }

  private void read(HWPFDocument word) {
    List<DocNote> footnotes = asides("footnote", word.getFootnoteRange(), NOTE);
    List<DocNote> comments = asides("comment", word.getCommentsRange(), COMMENT);
    List<DocNote> endnotes = asides("endnote", word.getEndnoteRange(), NOTE);
    asides.addAll(footnotes);
    asides.addAll(comments);
    asides.addAll(endnotes);
    Range range = word.getRange();
    int called = 0;
    for (int i = 0; i < range.numParagraphs(); i++) {
      Cancellation.check();
      Paragraph paragraph = range.getParagraph(i);
      List<DocNote> hung = new ArrayList<>();
      called(hung, footnotes, word.getFootnotes(), paragraph);
      called(hung, endnotes, word.getEndnotes(), paragraph);
      int calls = (int) paragraph.text().chars().filter(c -> c == COMMENT).count();
      for (int c = 0; c < calls && called < comments.size(); c++) hung.add(comments.get(called++));
      paragraphs.add(told(paragraph, hung));
    }
    // Comments whose call is lost belong to the whole.
    if (called < comments.size()) {
      List<DocNote> loose = comments.subList(called, comments.size());
      paragraphs.add(new Told(new MarkedText(), "", loose));
    }
  }

  private static void called(
      List<DocNote> hung, List<DocNote> notes, Notes places, Paragraph paragraph) {
    for (int i = 0; i < Math.min(notes.size(), places.getNotesCount()); i++) {
      int at = places.getNoteAnchorPosition(i);
      if (at >= paragraph.getStartOffset() && at < paragraph.getEndOffset()) hung.add(notes.get(i));
    }
  }

  private static Told told(Paragraph paragraph, List<DocNote> hung) {
    MarkedText text = new MarkedText();
    StringBuilder shown = new StringBuilder();
    boolean code = false;
    for (int i = 0; i < paragraph.numCharacterRuns(); i++) {
      CharacterRun run = paragraph.getCharacterRun(i);
      Set<Mark> marks = marks(run);
      StringBuilder words = new StringBuilder();
      for (char c : run.text().toCharArray()) {
        if (c == CODE) code = true;
        if (!code && c >= ' ') words.append(c);
        if (c == RESULT || c == FIELD_END) code = false;
      }
      if (run.isStrikeThrough() && !run.isMarkedDeleted()) continue;
      text.append(words, marks);
      if (!run.isMarkedDeleted()) shown.append(words);
    }
    return new Told(text, shown.toString(), hung);
  }

  private static Set<Mark> marks(CharacterRun run) {
    Set<Mark> marks = EnumSet.noneOf(Mark.class);
    if (run.isMarkedDeleted()) marks.add(Mark.DELETED);
    if (run.isMarkedInserted()) marks.add(Mark.INSERTED);
    if (run.isDoubleStrikeThrough()) marks.add(Mark.STRUCK);
    if (run.isVanished()) marks.add(Mark.HIDDEN);
    return marks;
  }

  /** The asides of a kind, each of which starts with its sign. */
  private static List<DocNote> asides(String part, Range range, char sign) {
    List<DocNote> asides = new ArrayList<>();
    if (range == null) return asides;
    for (int i = 0; i < range.numParagraphs(); i++) {
      String text = range.getParagraph(i).text();
      for (String piece : text.split("(?=" + sign + ")")) {
        String line = CleanText.line(piece);
        boolean starts = !piece.isEmpty() && piece.charAt(0) == sign;
        if (starts || asides.isEmpty() && !line.isEmpty()) {
          asides.add(new DocNote(part, new ArrayList<>()));
        }
        if (!line.isEmpty()) asides.get(asides.size() - 1).lines().add(line);
      }
    }
    return asides;
  }
}
