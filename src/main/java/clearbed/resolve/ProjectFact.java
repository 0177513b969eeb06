package clearbed.resolve;

import clearbed.model.value.Content;
import java.util.List;

/**
 * Something the project knows and no document states, given in a rule file.
 *
 * @param tags entries it holds for; empty for all
 * @param rooms words of the room names it holds for; empty for all
 * @param exposures exposures it holds for; empty for all
 * @param words as written in the rule file, with its reason
 * @param file the rule file
 */
public record ProjectFact(
    String attribute,
    Content content,
    List<String> tags,
    List<String> rooms,
    List<String> exposures,
    String words,
    String file) {
  public ProjectFact {
    tags = List.copyOf(tags);
    rooms = List.copyOf(rooms);
    exposures = List.copyOf(exposures);
  }
}
