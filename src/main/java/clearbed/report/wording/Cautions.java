package clearbed.report.wording;

import java.util.Collection;
import java.util.List;

/** What a reader of findings on tile work must not forget. */
public final class Cautions {
  public record Caution(String subject, String text) {}

  private static final String IN_THE_STATES = " (in the United States: OSHA 29 CFR 1926.1153)";

  private static final List<Caution> ALL =
      List.of(
          new Caution(
              "This is a reading aid",
              "It reads what the documents say; it does not design. Local codes, the makers' written"
                  + " instructions and the licensed professional in charge decide. A document that"
                  + " passes every check can still be wrong."),
          new Caution(
              "Silica dust",
              "Cutting or grinding tile, mortar, grout and concrete frees fine crystalline silica."
                  + " Cut wet or with extraction and protect the lungs"
                  + IN_THE_STATES
                  + "."),
          new Caution(
              "Glass edges",
              "Cut and broken glass tile is sharp and throws splinters: eye protection, cut-resistant"
                  + " gloves, edges dressed before they are handled."),
          new Caution(
              "Alkali",
              "Wet cement mortar and grout burn skin and eyes, often without pain at first. Wash off"
                  + " at once; see the safety data sheet."),
          new Caution(
              "Epoxy",
              "Unhardened resins and hardeners can make a person allergic for life. Gloves and fresh"
                  + " air; no solvent to clean skin."),
          new Caution(
              "Slips",
              "Glass is slippery when wet. A measured friction value holds for the tested surface,"
                  + " level, clean and as tested; it differs by place and covers no ramp, stair, soap or oil,"
                  + " and it does not make a floor safe by itself."),
          new Caution(
              "Acids and etching cleaners",
              "Hydrofluoric acid and bifluorides etch glass and harm eyes, lungs and bones. Keep them"
                  + " off the site."),
          new Caution(
              "Old floors and mastics",
              "Old tile, backing and black mastic may hold asbestos. Have them tested before they are"
                  + " cut, ground or taken up."),
          new Caution(
              "Electric shock",
              "Wet saws and water: only on circuits with earth fault protection (GFCI, RCD)."),
          new Caution(
              "Pools",
              "Bonding of metal parts is for an electrician. Hot water let into a cold tank breaks"
                  + " glass: fill and heat as slowly as the makers say."),
          new Caution(
              "Falling tile",
              "Tile that lets go of a wall, ceiling or facade injures people below. Where many people"
                  + " pass, or high up, have bond, movement joints and backing checked on the site. Adhered tile"
                  + " overhead and outside is a matter of the building code, of wind and earthquakes, and of"
                  + " an engineer."));

  private Cautions() {}

  /**
   * All, in the words of the place.
   *
   * @param ruleSets names of those in use; by those of ISO and EN alone, rules of the United States
   *     hold nothing
   */
  public static List<Caution> of(Collection<String> ruleSets) {
    boolean american = ruleSets.stream().anyMatch(set -> !set.startsWith("iso"));
    return american
        ? ALL
        : ALL.stream()
            .map(one -> new Caution(one.subject(), one.text().replace(IN_THE_STATES, "")))
            .toList();
  }
}
