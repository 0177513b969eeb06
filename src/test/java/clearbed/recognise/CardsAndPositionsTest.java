package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.Entry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tables in which a tile is a card of its own or a position of a bill. */
class CardsAndPositionsTest {
  @TempDir Path folder;

  private Checked of(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
    return Checked.of(folder);
  }

  @Test
  void cards_stand_one_below_the_other_under_their_marks() throws IOException {
    Checked c =
        of(
            "cards.csv",
            "GT-1,\"Glass mosaic, washroom walls\"\n"
                + "Size,20 x 20 mm\n"
                + "Mortar,\"ANSI A118.15, white\"\n"
                + "Substrate,Cement backer board\n"
                + "GT-2,\"Cast glass tile, bar front\"\n"
                + "Size,50 x 200 mm\n"
                + "Mortar,\"ANSI A118.3, white\"\n"
                + "Substrate,Concrete\n");
    assertThat(c.project().glass().stream().map(Entry::tag)).containsExactly("GT-1", "GT-2");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("GT-2", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("GT-2", "substrate.type")).containsExactly("concrete");
  }

  @Test
  void the_number_of_a_position_is_no_mark_where_its_text_has_one() throws IOException {
    Checked c =
        of(
            "bill.md",
            "# 31 Tile work\n\n"
                + "| Pos. | Text | Quantity |\n|---|---|---|\n"
                + "| 31.610 | GT-1 Glass mosaic, 20 x 20 mm, to ANSI A137.2, translucent | 86 |\n"
                + "| 31.620 | GT-2 Cast glass tile, 50 x 200 mm, to ANSI A137.2, opaque | 40 |\n"
                + "| 31.710 | PT-1 Porcelain tile, 600 x 600 mm | 12 |\n");
    assertThat(c.project().glass().stream().map(Entry::tag)).containsExactly("GT-1", "GT-2");
    assertThat(c.governing("GT-1", "tile.translucency")).containsExactly("translucent");
    assertThat(c.governing("GT-2", "tile.size")).containsExactly("50 mm x 200 mm");
  }

  @Test
  void the_mark_of_a_card_stands_behind_the_name_of_its_kind() throws IOException {
    Checked c =
        of(
            "facing.csv",
            "FICHE V.01,Glass facing\nKind,Fused glass tile\nSize,100 x 100 mm\n"
                + "Mortar,\"ANSI A118.15, white\"\nSubstrate,Cement board\nJoint width,2 mm\n");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("V.01");
    assertThat(c.governing("V.01", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("V.01", "tile.size")).containsExactly("100 mm x 100 mm");
    assertThat(c.governing("V.01", "grout.width")).containsExactly("2 mm");
  }
}
