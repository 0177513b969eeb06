package clearbed.recognise.section.outline;

import clearbed.model.document.Paragraph;
import java.util.List;

/**
 * A paragraph in its place of the outline.
 *
 * @param path what it stands under, from the outside in, and itself
 * @param part of a three-part section, or 0
 * @param introduction the line over the list that it is an item of, or empty
 */
public record OutlineLine(
    Paragraph paragraph, List<OutlineNode> path, int part, String introduction) {
  public OutlineNode own() {
    return path.get(path.size() - 1);
  }

  public String text() {
    return own().text();
  }

  public List<OutlineNode> above() {
    return path.subList(0, path.size() - 1);
  }

  /** The nearest title, its own if it is one; or empty. */
  public String heading() {
    for (int i = path.size() - 1; i >= 0; i--) {
      if (path.get(i).heading()) return path.get(i).text();
    }
    return "";
  }
}
