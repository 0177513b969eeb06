package clearbed.recognise.schedule.card;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cards of names and values, however they lie on the page. */
class CardsTest {
  @TempDir Path folder;

  private Checked of(String name, String... lines) {
    return Checked.ofFiles(folder, name, String.join("\n", lines) + "\n");
  }

  private static String place(Checked c, String tag, String attribute) {
    return c.project().entries().stream()
        .filter(e -> e.tag().equals(tag))
        .flatMap(e -> e.governing(attribute).stream())
        .map(v -> v.origin().cell())
        .findFirst()
        .orElse("");
  }

  @Test
  void a_card_runs_over_two_pairs_of_columns_under_its_mark() {
    Checked c =
        of(
            "cards.csv",
            "KW-1  GLASS MOSAIC,,,",
            "TILE,,FIXING,",
            "Size,30 x 30 mm,Background,Sand and cement render",
            "Thickness,6 mm,Adhesive,\"C2TE S1, white\"",
            "Place,Plunge pool,Joint width,2 mm",
            "KW-2  CERAMIC TILE,,,",
            "TILE,,FIXING,",
            "Size,100 x 100 mm,Background,Plasterboard",
            "Place,Pantry,Joint width,3 mm");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("KW-1");
    assertThat(c.governing("KW-1", "tile.thickness")).containsExactly("6 mm");
    assertThat(c.governing("KW-1", "mortar.isoClass")).containsExactly("C2");
    assertThat(c.governing("KW-1", "grout.width")).containsExactly("2 mm");
    assertThat(c.governing("KW-2", "grout.width")).isEmpty();
    assertThat(place(c, "KW-1", "grout.width")).isEqualTo("D5");
  }

  @Test
  void cards_lie_beside_one_another_and_a_blank_is_of_its_own_card() {
    Checked c =
        of(
            "cards.csv",
            "KW-1,,,KW-2,",
            "Kind,Glass mosaic,,Kind,Glass tile",
            "Size,1 x 1 in,,Size,4 x 8 in",
            "Mortar,ANSI A118.15,,Mortar,ANSI A118.4",
            "Joint width,1/16 in,,Joint width,",
            "Location,Steam room,,Location,Lobby");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("KW-1", "KW-2");
    assertThat(c.governing("KW-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("KW-2", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(c.governing("KW-1", "grout.width")).containsExactly("0.0625 in");
    assertThat(c.governing("KW-2", "grout.width")).isEmpty();
  }

  @Test
  void build_ups_stand_side_by_side_and_the_mark_is_in_the_layer_of_the_finish() {
    Checked c =
        of(
            "buildups.csv",
            "Layer,Type A,Type B,Type C",
            "Room,Hot pool,Corridor,Shop",
            "Substrate,Concrete,Cement board,Steel",
            "Mortar,\"ANSI A118.15, white\",ANSI A118.4,-",
            "Finish,\"KW-1 Glass mosaic, 1 x 1 in\",\"PT-2 Porcelain, 12 x 12 in\",GB-3 Glass block",
            "Grout,ANSI A118.3,ANSI A118.7,-");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("KW-1");
    assertThat(c.governing("KW-1", "tile.size")).containsExactly("1 in x 1 in");
    assertThat(c.governing("KW-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("KW-1", "grout.standard")).containsExactly("ANSI A118.3");
    assertThat(place(c, "KW-1", "grout.standard")).isEqualTo("B6");
  }

  @Test
  void dots_lead_from_names_to_values_under_a_lettered_mark() {
    Checked c =
        of(
            "list.txt",
            "LIST OF FINISHES",
            "",
            "A.  KW-1  GLASS MOSAIC",
            "    Size ............. 3/4 inch x 3/4 inch",
            "    Thickness ........ 1/4 inch",
            "    Place ............ Whirlpool 12",
            "    Mortar ........... ANSI A118.15",
            "    Grout joint ...... 1/16 inch",
            "",
            "B.  KW-2  SLATE",
            "    Size ............. 12 inches x 12 inches",
            "    Grout joint ...... 1/4 inch");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("KW-1");
    assertThat(c.governing("KW-1", "tile.thickness")).containsExactly("0.25 in");
    assertThat(c.governing("KW-1", "grout.width")).containsExactly("0.0625 in");
  }

  @Test
  void the_page_of_a_product_has_its_lines_in_numbered_parts() {
    Checked c =
        of(
            "page.txt",
            "KW01",
            "",
            "Glass mosaic for wet walls",
            "",
            "1. Product",
            "",
            "- Size: 23 x 48 mm",
            "- Thickness: 8 mm",
            "",
            "2. Installation",
            "",
            "- Substrate: Fibre cement board",
            "- Adhesive: C2TE S1",
            "- Joint width: 2 mm");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("KW01");
    assertThat(c.governing("KW01", "tile.thickness")).containsExactly("8 mm");
    assertThat(c.governing("KW01", "grout.width")).containsExactly("2 mm");
  }

  @Test
  void what_was_before_and_what_is_now_make_no_card() {
    Checked c =
        of(
            "changes.csv",
            "Mark,Item,Was,Now",
            "KW-1,Substrate,Gypsum board,Cement board",
            "KW-1,Mortar,ANSI A118.4,ANSI A118.15",
            "KW-1,Grout joint,1/8 in,1/16 in");
    assertThat(c.project().entries())
        .flatExtracting(Entry::values)
        .noneMatch(v -> v.asWritten().contains("A118.4"));
  }

  @Test
  void columns_of_text_two_blanks_apart_stand_under_one_line() {
    Checked c =
        of(
            "table.txt",
            "Ref   Finish        Size     Thk  Base      Joint",
            "                    mm       mm             mm",
            "---------------------------------------------------",
            "KW1   Glass mosaic  20 x 20  4    Concrete  2",
            "KW2   \"             \"        6    Render    3",
            "KC1   Ceramic tile  99 x 99  7    Plaster   3");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("KW1", "KW2");
    assertThat(c.governing("KW2", "tile.size")).containsExactly("20 mm x 20 mm");
    assertThat(c.governing("KW2", "tile.thickness")).containsExactly("6 mm");
  }

  @Test
  void a_box_of_a_drawn_table_holds_several_lines() {
    Checked c =
        of(
            "table.txt",
            "+------+---------------+---------------+---------------+",
            "| MARK | PRODUCT       | BACKUP        | GROUT         |",
            "+======+===============+===============+===============+",
            "| KW-1 | Glass mosaic  | Cement board  | Epoxy         |",
            "|      | 3/4 x 3/4 in. |               | Joint 1/16 in.|",
            "+------+---------------+---------------+---------------+",
            "| KP-2 | Porcelain     | Mortar bed    | Sanded        |",
            "|      | 12 x 12 in.   |               | Joint 1/4 in. |",
            "+------+---------------+---------------+---------------+");
    assertThat(c.project().entries()).extracting(Entry::tag).contains("KW-1").doesNotContain("");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("KW-1");
    assertThat(c.governing("KW-1", "tile.size")).containsExactly("0.75 in x 0.75 in");
    assertThat(c.governing("KW-1", "grout.width")).containsExactly("0.0625 in");
  }
}
