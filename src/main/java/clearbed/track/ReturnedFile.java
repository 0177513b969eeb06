package clearbed.track;

import clearbed.mark.LetterWords;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.read.source.Checksums;
import clearbed.read.source.Format;
import clearbed.read.source.Reasons;
import clearbed.read.source.Source;
import clearbed.read.source.Unreadable;
import clearbed.read.word.WordReader;
import clearbed.report.letter.LetterMarkdown;
import clearbed.track.ReturnedLetter.LetterPiece;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The paragraphs of a letter that came back as a Word file or as text. */
final class ReturnedFile {
  private static final Pattern HEADING = Pattern.compile("(#{1,6})\\s+(.*)");
  private static final Pattern QUOTED = Pattern.compile("^>[>\\s]*");
  private static final Pattern BULLET = Pattern.compile("^[-*+] (?=\\S)");

  private ReturnedFile() {}

  /**
   * @throws IOException with the reason, one line
   */
  static List<LetterPiece> word(Path file) throws IOException {
    try {
      Checksums.require(file);
      Source source = new Source(file.getFileName().toString(), file, true, false);
      return pieces(new WordReader().read(source));
    } catch (Unreadable wrong) {
      throw new IOException(wrong.getMessage(), wrong);
    } catch (Exception wrong) {
      throw new IOException(Reasons.of(wrong, Format.DOCX), wrong);
    }
  }

  private static List<LetterPiece> pieces(Document word) {
    List<LetterPiece> pieces = new ArrayList<>();
    for (Block block : word.blocks()) {
      if (block instanceof Paragraph paragraph) add(pieces, paragraph);
      else if (block instanceof Table table) add(pieces, table);
    }
    return pieces;
  }

  private static void add(List<LetterPiece> pieces, Paragraph paragraph) {
    String label = paragraph.label().isEmpty() ? "" : paragraph.label() + " ";
    switch (paragraph.region()) {
      case BODY ->
          pieces.add(new LetterPiece(label + paragraph.text(), paragraph.headingLevel(), ""));
      case COMMENT -> pieces.add(new LetterPiece(paragraph.text(), 0, "a comment"));
      case NOTE -> pieces.add(new LetterPiece(paragraph.text(), 0, "a note"));
      case HEADER, FOOTER -> {}
    }
  }

  private static void add(List<LetterPiece> pieces, Table table) {
    for (Table.Row row : table.rows()) {
      for (Table.Cell cell : row.cells()) {
        if (cell.continued()) continue;
        pieces.add(new LetterPiece(cell.text(), 0, ""));
        if (!cell.remark().isBlank()) pieces.add(new LetterPiece(cell.remark(), 0, "a comment"));
      }
    }
  }

  /**
   * Markdown or plain text, as it was or quoted in a mail.
   *
   * @throws IOException when it cannot be read
   */
  static List<LetterPiece> text(Path file) throws IOException {
    List<LetterPiece> pieces = new ArrayList<>();
    String all = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
    if (all.indexOf('\0') >= 0 || all.indexOf('\uFFFD') >= 0)
      throw new IOException("it is not text in UTF-8; save it so");
    List<String> lines = new ArrayList<>();
    for (String line : all.replace("\uFEFF", "").split("\\R")) {
      String bare = QUOTED.matcher(line.strip()).replaceFirst("");
      lines.add(withoutRemark(bare).strip());
    }
    if (lines.stream().anyMatch(line -> HEADING.matcher(line).matches())) return headed(lines);
    lines.forEach(line -> pieces.add(piece(line, 0)));
    return pieces;
  }

  /** From the first beginning of a remark to the last end of one. */
  private static String withoutRemark(String line) {
    int from = line.indexOf("<!--");
    int to = line.lastIndexOf("-->");
    return from < 0 || to < from + 4 ? line : line.substring(0, from) + line.substring(to + 3);
  }

  private static List<LetterPiece> headed(List<String> lines) {
    List<LetterPiece> pieces = new ArrayList<>();
    StringBuilder paragraph = new StringBuilder();
    boolean answer = false;
    for (String words : lines) {
      Matcher heading = HEADING.matcher(words);
      answer = !heading.matches() && (answer || words.startsWith(LetterWords.ANSWER + ":"));
      // Mail breaks long lines of ours; where people write, their lines stay as they are.
      boolean goesOn = !answer && !words.isEmpty() && !BULLET.matcher(words).find();
      if (!goesOn || heading.matches()) end(paragraph, pieces);
      if (heading.matches()) pieces.add(piece(heading.group(2), heading.group(1).length() - 1));
      else if (answer) pieces.add(piece(words, 0));
      else paragraph.append(paragraph.isEmpty() ? "" : " ").append(words);
    }
    end(paragraph, pieces);
    return pieces;
  }

  private static void end(StringBuilder paragraph, List<LetterPiece> pieces) {
    String words = BULLET.matcher(paragraph).replaceFirst("");
    if (!words.isBlank()) pieces.add(piece(words, 0));
    paragraph.setLength(0);
  }

  private static LetterPiece piece(String marked, int level) {
    return new LetterPiece(LetterMarkdown.unmarked(marked), level, "");
  }
}
