package clearbed.model.document;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.value.Content;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlacedTest {
  private static final Placed.Placing<Value> PLACE = new Placed.Placing<>(Value::origin, Value::at);

  @ParameterizedTest
  @ValueSource(ints = {1, 1_000_000})
  void what_is_packed_comes_out_equal_wherever_it_stands(int many) {
    List<Value> values = new ArrayList<>();
    for (String cell :
        new String[] {"A1", "B7", "AB12", "BZZ3", "XFD1048576", "A0", "a1", "7", "B07", "", null}) {
      values.add(value("grout.width", Origin.ofCell("s.xlsx", "Tile", cell, "1/8")));
    }
    values.add(value("grout.width", Origin.ofDocument("s.docx").withHeading("2.3 B")));
    List<Value> packed = new Placed.Packer<>(PLACE, many).pack(values);
    assertThat(packed).isEqualTo(values);
    assertThat(ThinList.<Value>copyOf(packed)).isSameAs(packed);
  }

  @Test
  void things_of_one_name_are_found_in_their_order() {
    List<Value> values =
        List.of(at("a", "A1"), at("b", "B1"), at("b", "C1"), at("b", "D1"), at("d", "E1"));
    Placed<Value> packed = (Placed<Value>) new Placed.Packer<>(PLACE, 1_000_000).pack(values);
    assertThat(packed.named("b", Value::attribute, v -> true)).isEqualTo(values.subList(1, 4));
    assertThat(packed.named("a", Value::attribute, v -> true)).hasSize(1);
    assertThat(packed.named("c", Value::attribute, v -> true)).isEmpty();
    assertThat(packed.named("b", Value::attribute, Value::excluded)).isEmpty();
  }

  @Test
  void a_row_of_plain_texts_gives_the_cells_it_was_made_of() {
    List<Table.Cell> cells =
        List.of(Table.Cell.of(4, 0, "GT-1"), Table.Cell.of(4, 2, ""), Table.Cell.of(4, 5, "x"));
    Table.Row row = new Table.Row(4, cells, false);
    assertThat(row.cells()).isEqualTo(cells);
    assertThat(row.at(2)).isEqualTo(cells.get(1));
    assertThat(row.at(1)).isNull();
    assertThat(row.at(6)).isNull();
  }

  @Test
  void a_row_with_anything_else_in_it_keeps_that() {
    Table.Cell merged = new Table.Cell(1, 3, true, "walls", "see note", 2, 5);
    List<Table.Cell> cells = List.of(Table.Cell.of(4, 0, "GT-1"), merged, Table.Cell.of(4, 4, "y"));
    Table.Row row = new Table.Row(4, cells, false);
    assertThat(row.cells()).isEqualTo(cells);
    assertThat(row.at(3)).isEqualTo(merged);
  }

  private static Value at(String attribute, String cell) {
    return value(attribute, Origin.ofCell("s.xlsx", "Tile", cell, "words"));
  }

  private static Value value(String attribute, Origin origin) {
    return new Value(
        attribute, new Content.Words("words"), false, "words", origin, Scope.ENTRY, true);
  }
}
