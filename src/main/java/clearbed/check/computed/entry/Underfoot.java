package clearbed.check.computed.entry;

import clearbed.check.judge.TilePlace;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Entry;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.Set;

/**
 * How a tile is walked on, by its surface, its exposure and the words on its place.
 *
 * @param sloped a stair, steps or a ramp
 * @param tank the floor of a pool, with no word of people who walk in
 * @param idle a tank that nobody enters
 * @param wet walked on wet inside
 * @param muchWater where many people bring water: pool decks, public showers, changing rooms
 * @param shower of whatever kind
 * @param atHome in a dwelling or a guest room
 */
record Underfoot(
    boolean sloped,
    boolean tank,
    boolean idle,
    boolean outside,
    boolean wet,
    boolean steam,
    boolean barefoot,
    boolean muchWater,
    boolean shower,
    boolean atHome) {

  static Underfoot of(Entry entry, Vocabulary vocabulary) {
    Set<String> surfaces = TilePlace.terms(entry, "location.surface");
    Set<String> exposures = TilePlace.terms(entry, "location.exposure");
    Set<String> feet = TilePlace.terms(entry, "location.footwear");
    String place = TilePlace.words(entry);
    boolean sloped = surfaces.contains("stair") || surfaces.contains("ramp");
    boolean tank =
        surfaces.contains("pool") && !sloped && !vocabulary.list("checks.walkedInto").in(place);
    boolean wet = exposures.contains("wet") || exposures.contains("submerged");
    return new Underfoot(
        sloped,
        tank,
        tank && vocabulary.list("checks.notEntered").in(place),
        exposures.contains("exterior") || exposures.contains("exterior-freeze"),
        wet,
        exposures.contains("steam"),
        feet.contains("barefoot") && !feet.contains("shod"),
        wet && vocabulary.list("checks.muchWater").in(place),
        vocabulary.list("checks.shower").in(place),
        vocabulary.list("checks.atHome").in(place));
  }

  /**
   * Feet in deep water carry no weight; on shallow floors and ledges they do.
   *
   * @param onFloor what would hold were it a floor
   * @param measure of slip, in words
   * @param asked what is asked besides whether people walk there
   */
  static Judgement ofTheTank(
      Entry entry, Judgement onFloor, String measure, String expected, String asked) {
    if (onFloor instanceof Judgement.Undecided) return onFloor;
    String found = onFloor instanceof Judgement.Failed f ? f.words().found() : "not stated";
    return new Judgement.Failed(
        FindingKind.UNRESOLVED,
        new FindingWords(
            "{tag} is on the floor of a pool; its " + measure + " is {found}.",
            found,
            expected,
            List.of(),
            "Do people walk on {tag}, in shallow water, on ledges, steps or a beach entry, and "
                + asked),
        FoundAt.at(entry.origin()));
  }
}
