package clearbed.recognise.schedule.cell;

import clearbed.recognise.statement.TagList;
import clearbed.recognise.statement.Tags;
import java.util.regex.Pattern;

/** Cells that hold the marks of tiles and no more. */
public final class TagCells {
  private static final Pattern NAMED =
      Pattern.compile(
          "(?:type|tile|mark|ref|code|mix)\\.?\\s+(?=\\S{1,8}$)", Pattern.CASE_INSENSITIVE);

  private TagCells() {}

  /** "GM-A" of "Type GM-A". */
  public static String unnamed(String tag) {
    return NAMED.matcher(tag.trim()).replaceFirst("");
  }

  /** True of a mark, and of a list or a range of marks. */
  public static boolean looksLikeTags(String text) {
    return Tags.isMark(text) || TagList.inCell(text) != null;
  }
}
