package clearbed.recognise.section.clause;

import java.util.List;

/**
 * The tiles that a clause is about, and what it says that they are.
 *
 * @param tags as written; empty when it is about none in particular
 * @param own true when the clause itself names them, false when they stand in a title or lead-in
 *     above it
 * @param specified true when its opening words, or that title, are about them; false when it only
 *     names them further on
 * @param glass true when it says that they are glass tile
 * @param other kind of the other tile that it says they are, or empty
 */
public record Subject(
    List<String> tags, boolean own, boolean specified, boolean glass, String other) {
  static final Subject NONE = new Subject(List.of(), false, false, false, "");

  public Subject {
    tags = List.copyOf(tags);
  }
}
