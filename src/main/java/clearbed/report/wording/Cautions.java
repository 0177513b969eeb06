package clearbed.report.wording;

import java.util.List;

/** What a reader of findings on tile work must not forget. */
public final class Cautions {
  public record Caution(String subject, String text) {}

  public static final List<Caution> ALL =
      List.of(
          new Caution(
              "This is a reading aid",
              "It reads what the documents say; it does not design. Local codes, the makers' written"
                  + " instructions and the licensed professional in charge decide. A document that"
                  + " passes every check can still be wrong."),
          new Caution(
              "Silica dust",
              "Cutting or grinding tile, mortar, grout and concrete frees fine crystalline silica."
                  + " Cut wet or with extraction and protect the lungs (in the United States: OSHA 29"
                  + " CFR 1926.1153)."),
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
                  + " clean and as tested; it does not make a floor safe by itself."),
          new Caution(
              "Falling tile",
              "Tile that lets go of a wall, ceiling or facade injures people below. Where many people"
                  + " pass, or high up, have bond, movement joints and backing checked on the site."));

  private Cautions() {}
}
