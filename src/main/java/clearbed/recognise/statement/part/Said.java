package clearbed.recognise.statement.part;

import clearbed.model.value.Content;
import java.util.Set;

/**
 * A value that a part of a text gives an attribute, before it is known what it is limited to.
 *
 * @param start of the words that give it
 * @param end behind them
 */
public record Said(String attribute, Content content, boolean excluded, int start, int end) {
  private static final Set<String> OF_PLACES = Set.of("movement.places", "movement.layout");

  /** Of these several together are one value. */
  private static final Set<String> LISTS = Set.of("movement.places", "text");

  /**
   * True for what the places that its sentence names do not limit: "do not fill the pool until
   * cured".
   */
  boolean anywhere() {
    return attribute.startsWith("process.") || OF_PLACES.contains(attribute);
  }

  /** True when another value of the same attribute is said of something else. */
  public boolean differs(Said other) {
    return attribute.equals(other.attribute)
        && !LISTS.contains(attribute)
        && !content.equals(other.content);
  }
}
