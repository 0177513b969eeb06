package clearbed.read.markup;

import clearbed.read.block.Mark;
import clearbed.read.xml.Xml;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumSet;
import java.util.Set;

/**
 * Marks in an RTF file, with characters of private use, what the library that reads it does not
 * tell: where rows and cells end, which words are struck, deleted or hidden, where headers, notes
 * and comments are. {@link RtfHandler} looks for the marks in the text that comes out. Keywords are
 * those of the Rich Text Format specification 1.9.1.
 */
final class RtfMarks {
  /** The first of two for each mark on words: on and off. */
  static final char FIRST_MARK = '\uE0C3';

  static final char HEADER = '\uE0CD';
  static final char FOOTER = '\uE0CE';
  static final char FOOTNOTE = '\uE0CF';
  static final char ENDNOTE = '\uE0D0';
  static final char COMMENT = '\uE0D1';
  static final char END = '\uE0D2';

  /** Groups whose content is no text, or is told elsewhere. */
  private static final Set<String> NO_TEXT =
      Set.of(
          "fonttbl",
          "colortbl",
          "stylesheet",
          "info",
          "pict",
          "fldinst",
          "listtable",
          "listoverridetable",
          "revtbl",
          "themedata",
          "datastore");

  /** What the library takes for text though it is only about a comment. */
  private static final Set<String> ABOUT_COMMENTS =
      Set.of("atnid", "atnauthor", "atntime", "atndate", "atnref", "atnparent", "atnicn");

  private static final int DEEPEST = 2_000;

  private final String in;
  private final StringBuilder out;
  private final Deque<RtfGroup> groups = new ArrayDeque<>();
  private RtfGroup group = new RtfGroup(0);
  private Set<Mark> told = Set.of();
  private int at;
  private boolean begun;

  /** What holds until the end of a group. */
  private static final class RtfGroup {
    private final int start;
    private Set<Mark> marks = Set.of();
    private boolean optional;
    private boolean noText;
    private boolean dropped;
    private boolean ends;

    RtfGroup(int start) {
      this.start = start;
    }

    RtfGroup within(int from) {
      RtfGroup inner = new RtfGroup(from);
      inner.marks = marks;
      inner.noText = noText;
      return inner;
    }

    void set(Mark mark, boolean on) {
      Set<Mark> now = EnumSet.noneOf(Mark.class);
      now.addAll(marks);
      if (on) now.add(mark);
      else now.remove(mark);
      marks = now;
    }
  }

  private RtfMarks(String rtf) {
    in = rtf;
    out = new StringBuilder(rtf.length() + rtf.length() / 16);
  }

  /** The file with its marks. */
  static byte[] marked(byte[] rtf) {
    RtfMarks marks = new RtfMarks(new String(rtf, StandardCharsets.ISO_8859_1));
    marks.run();
    return marks.out.toString().getBytes(StandardCharsets.ISO_8859_1);
  }

  private void run() {
    while (at < in.length()) {
      char c = in.charAt(at);
      switch (c) {
        case '{' -> open();
        case '}' -> close();
        case '\\' -> control();
        case '\r', '\n' -> copy(1);
        default -> {
          text();
          copy(1);
        }
      }
    }
  }

  private void copy(int length) {
    int end = Math.min(in.length(), at + length);
    out.append(in, at, end);
    at = end;
  }

  private void open() {
    // Groups within groups without end hold no text.
    if (groups.size() < DEEPEST) {
      groups.push(group);
      group = group.within(out.length());
    }
    copy(1);
  }

  private void close() {
    if (group.ends) put(END);
    copy(1);
    if (group.dropped) out.setLength(group.start);
    if (!groups.isEmpty()) group = groups.pop();
  }

  private void control() {
    char next = at + 1 < in.length() ? in.charAt(at + 1) : 0;
    if (next == '*') group.optional = true;
    if (isLetter(next)) {
      word();
    } else if (next == '\'') {
      text();
      copy(4);
    } else {
      if (next == '\\' || next == '{' || next == '}' || next == '~' || next == '_') text();
      copy(2);
    }
  }

  private void word() {
    int end = at + 1;
    while (end < in.length() && isLetter(in.charAt(end))) end++;
    String word = in.substring(at + 1, end);
    int figures = end;
    if (end < in.length() && in.charAt(end) == '-') end++;
    while (end < in.length() && Character.isDigit(in.charAt(end))) end++;
    String figure = in.substring(figures, end);
    if (end < in.length() && in.charAt(end) == ' ') end++;
    int length = end - at;
    if (word.equals("bin")) length += Math.max(0, Xml.number(figure, 0));
    if (!handled(word, figure, length)) copy(length);
  }

  /** True when the word itself is left out, or was copied. */
  private boolean handled(String word, String figure, int length) {
    boolean on = !figure.equals("0");
    switch (word) {
      case "strike", "striked" -> group.set(Mark.STRUCK, on);
      case "deleted" -> group.set(Mark.DELETED, on);
      case "revised" -> group.set(Mark.INSERTED, on);
      case "v" -> group.set(Mark.HIDDEN, on);
      case "plain" -> group.marks = Set.of();
      case "u", "tab", "emdash", "endash", "bullet", "lquote", "rquote", "ldblquote", "rdblquote" ->
          text();
      case "trowd" -> put(RtfRows.START);
      case "cell" -> {
        put(RtfRows.CELL);
        at += length;
        return true;
      }
      case "row" -> {
        put(RtfRows.ROW);
        out.append("\\par ");
        at += length;
        return true;
      }
      default -> {
        return destination(word, length);
      }
    }
    return false;
  }

  /** True when the word was copied. */
  private boolean destination(String word, int length) {
    boolean optional = group.optional;
    group.optional = false;
    if (ABOUT_COMMENTS.contains(word)) {
      group.noText = true;
      group.dropped = true;
    } else if (NO_TEXT.contains(word)) {
      group.noText = true;
    } else {
      char start = start(word, length);
      if (start != 0) return begin(start, length);
      if (optional && !word.startsWith("shp")) group.noText = true;
    }
    return false;
  }

  private char start(String word, int length) {
    return switch (word) {
      case "header", "headerl", "headerr", "headerf" -> HEADER;
      case "footer", "footerl", "footerr", "footerf" -> FOOTER;
      case "footnote" -> in.startsWith("\\ftnalt", at + length) ? ENDNOTE : FOOTNOTE;
      case "annotation" -> COMMENT;
      default -> 0;
    };
  }

  /** Tells of the group behind the word that opens it. */
  private boolean begin(char mark, int length) {
    if (group.ends || group.noText) return false;
    group.ends = true;
    copy(length);
    put(mark);
    return true;
  }

  private static boolean isLetter(char c) {
    return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z';
  }

  /** Tells what has changed for the words that follow. */
  private void text() {
    group.optional = false;
    if (group.noText || group.marks.equals(told)) return;
    for (Mark mark : Mark.values()) {
      boolean was = told.contains(mark);
      boolean is = group.marks.contains(mark);
      if (was != is) put((char) (FIRST_MARK + 2 * mark.ordinal() + (is ? 0 : 1)));
    }
    told = Set.copyOf(group.marks);
  }

  private void put(char mark) {
    // Until a paragraph begins the library takes all it meets for the head of the file.
    out.append(begun ? "{" : "{\\pard").append("\\uc1\\u").append((int) mark).append(" ?}");
    begun = true;
  }
}
