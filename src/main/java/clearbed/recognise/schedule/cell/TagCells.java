package clearbed.recognise.schedule.cell;

import clearbed.recognise.statement.code.TagList;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.regex.Pattern;

/** Cells that hold the marks of tiles and no more. */
public final class TagCells {
  private static final Pattern NAMED =
      Pattern.compile(
          "(?:type|tile|mark|ref|code|mix)\\.?\\s+(?=\\S{1,8}$)", Pattern.CASE_INSENSITIVE);

  private static final Pattern REMARK = Pattern.compile("\\s*\\([^()]{2,80}\\)\\s*$");

  private final Vocabulary vocabulary;

  public TagCells(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** "GM-A" of "Type GM-A". */
  public static String unnamed(String tag) {
    return NAMED.matcher(tag.trim()).replaceFirst("");
  }

  /** "W-9" of "W-9 (in the sun)". */
  public static String withoutRemark(String cell) {
    String bare = REMARK.matcher(cell).replaceFirst("");
    return !bare.equals(cell) && (Tags.isMark(bare) || TagList.inCell(bare) != null) ? bare : cell;
  }

  /** True of a mark, and of a list or a range of marks. */
  public static boolean looksLikeTags(String cell) {
    String text = withoutRemark(cell);
    return Tags.isMark(text) || TagList.inCell(text) != null;
  }

  /** True of a mark, and of one of a form that was taught. */
  public boolean isTag(String text) {
    return Tags.isMark(text, vocabulary);
  }

  /** The same of a list or a range of tags, too. */
  public boolean areTags(String text) {
    return looksLikeTags(text) || vocabulary.taught().isTag(text);
  }

  /**
   * The tags of a cell that is no list of them as people write such; its words where it has none.
   */
  public List<String> in(String cell) {
    String text = withoutRemark(PlainText.of(cell).trim().replaceAll("\\s+", " "));
    if (isTag(text)) return List.of(text);
    String bare = unnamed(text);
    if (isTag(bare)) return List.of(bare);
    List<String> parts = List.of(text.split("\\s*[,;&/]\\s*|\\s+and\\s+|\\n"));
    return parts.size() > 1 && parts.stream().allMatch(this::isTag) ? parts : List.of(text);
  }
}
