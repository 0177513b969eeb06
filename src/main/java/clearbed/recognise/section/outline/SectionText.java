package clearbed.recognise.section.outline;

import clearbed.model.document.Origin;
import clearbed.recognise.vocabulary.TileWords;
import java.util.ArrayList;
import java.util.List;

/**
 * The lines of one section before it is known what they state, and what its titles say.
 *
 * @param number as people cite it, or empty
 * @param section false for notes
 * @param scheduleNotes true for what stands around a schedule
 * @param remarks what people say of its paragraphs
 */
public record SectionText(
    Origin origin,
    String fileName,
    OtherMarks others,
    String number,
    String title,
    boolean section,
    boolean scheduleNotes,
    List<OutlineLine> lines,
    List<OutlineLine> remarks) {
  /** Of so many paragraphs on tile and grout, and of every fourth at least, a section is known. */
  private static final int FEWEST_ON_TILE = 5;

  /** A title of tile work stands over so many lines. */
  private static final int FEWEST_LINES = 6;

  private static final int LONGEST_OPENING = 160;

  /** A line of a title, in characters, and in words where it ends as a sentence does. */
  private static final int LONGEST_TITLE = 110;

  private static final int LONGEST_LINE = 12;

  /** Lines before a title and it. */
  static final int OPENING_TITLES = 6;

  /** Sections of a name or number that they do not give themselves are known by the file. */
  static SectionText named(SectionText text) {
    boolean work = !text.section && !text.scheduleNotes && text.titledAsTileWork();
    if (!work && !text.section) return text;
    String title = work ? text.titleOfTileWork() : text.title;
    return new SectionText(
        text.origin,
        text.fileName,
        text.others,
        text.number.isEmpty() ? SectionNumbers.ofFile(text.fileName) : text.number,
        title.isEmpty() ? text.titleOfFile() : title,
        true,
        text.scheduleNotes,
        text.lines,
        text.remarks);
  }

  public boolean isEmpty() {
    return lines.isEmpty() && remarks.isEmpty();
  }

  public boolean notes() {
    return !section && number.isEmpty();
  }

  /** Notes that nowhere speak of tile work say nothing of tiles. */
  public boolean ofOtherWork() {
    return notes()
        && !scheduleNotes
        && lines.stream().noneMatch(line -> TileWords.tileWork(line.text()));
  }

  /** True where the section, a title or one of the first lines speaks of tile work. */
  public boolean opensOnTileWork() {
    return lines.stream().limit(OPENING_TITLES).anyMatch(first -> first.own().wording().tileWork())
        || TileWords.tileWork(title);
  }

  /** A section of an unknown number and title is known by what it says. */
  public boolean isOnTile() {
    long tile = lines.stream().filter(p -> TileWords.tileWork(p.text())).count();
    return tile >= FEWEST_ON_TILE && tile * 4 >= lines.size();
  }

  /**
   * Offices outside the numbered systems title their sections in words: {@code SPECIFICATION OF
   * TILE WORK}.
   */
  private boolean titledAsTileWork() {
    if (lines.size() < FEWEST_LINES) return false;
    for (String title : titles()) {
      if (title.matches("(?is).*\\b(?:notes?|schedule|addendum|minutes|legend)\\b.*")) return false;
      boolean work = title.matches("(?is).*\\b(?:specifications?|works?|tiling)\\b.*");
      if (work && TileWords.tile(title)) return true;
    }
    return false;
  }

  private String titleOfTileWork() {
    return titles().stream()
        .filter(TileWords::tile)
        .findFirst()
        .orElseGet(() -> lines.get(0).text());
  }

  /** Office, project and title, line for line, down to what carries a number. */
  private List<String> titles() {
    List<String> out = new ArrayList<>();
    if (opening().length() < LONGEST_OPENING) out.add(opening());
    for (OutlineLine p : lines.subList(0, Math.min(OPENING_TITLES, lines.size()))) {
      String text = p.text();
      if (!out.isEmpty() && !p.own().wording().label().number().isEmpty()) break;
      if (text.length() < LONGEST_TITLE && !isSentence(text)) out.add(text);
    }
    return out;
  }

  private static boolean isSentence(String text) {
    return text.endsWith(".") && text.split("\\s+").length > LONGEST_LINE;
  }

  /** Its first words that may be a title, or empty. */
  public String openingTitle() {
    String opening = lines.isEmpty() ? "" : opening();
    return opening.length() < LONGEST_OPENING ? opening : "";
  }

  private String opening() {
    return lines.get(0).text() + (lines.size() > 1 ? " " + lines.get(1).text() : "");
  }

  private String titleOfFile() {
    return fileName.replaceAll("\\.[A-Za-z0-9]+$", "").replaceAll(".*/", "");
  }
}
