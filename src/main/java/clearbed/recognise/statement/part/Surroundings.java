package clearbed.recognise.statement.part;

import clearbed.recognise.statement.limit.LaterWords;
import clearbed.recognise.statement.limit.LimitFinder;
import clearbed.recognise.statement.limit.Limits;
import java.util.List;

/**
 * What stands around a part of a text and limits it, too.
 *
 * @param lead of the lead-in
 * @param previous of the part before
 * @param sameWork true when the lead-in names no other part of the work
 */
public record Surroundings(Parts.Part part, Limits lead, Limits previous, boolean sameWork) {

  /** Within the lead-in. */
  public Limits within(Limits own) {
    return behindGlass(own.within(lead));
  }

  /** Within the lead-in, and on the tile of the sentence before where none is named. */
  public Limits settle(Limits own) {
    Limits limits = within(own);
    return part.sentence()
        ? LaterWords.sameSubject(limits, previous, sameWork, part.text())
        : limits;
  }

  /**
   * At all places that were not named.
   *
   * @param own of the part itself
   * @param named what was said of places before
   */
  Limits elsewhere(Limits own, List<Limits> named) {
    Limits tile = Limits.NONE.and(lead.kind()).and(previous.kind());
    // "Other tile" behind glass tile is no glass; "the other glass tile" is.
    Limits limits = behindGlass(own);
    if (!limits.otherTileOnly()) limits = limits.within(tile);
    return limits.withExcept(limits.except().and(LaterWords.left(named)));
  }

  private Limits behindGlass(Limits limits) {
    return previous.glass() ? LimitFinder.behindGlass(limits, part.text()) : limits;
  }
}
