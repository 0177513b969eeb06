package clearbed.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.Content;
import clearbed.model.Origin;
import clearbed.model.Scope;
import clearbed.model.Value;
import java.util.List;
import org.junit.jupiter.api.Test;

class AmendmentsTest {
  @Test
  void an_addendum_takes_the_place_of_the_schedule_and_leaves_it_in_sight() {
    Value first = value("1/8 in", "Tile schedule.xlsx");
    Value later = value("1/16 in", "bid/Addendum 2 tile.docx");

    assertThat(Amendments.applied(List.of(first, later)))
        .extracting(Value::scope)
        .containsExactly(Scope.GENERAL, Scope.ENTRY);
  }

  @Test
  void two_documents_of_one_issue_still_contradict_each_other() {
    List<Value> values =
        List.of(value("1/8 in", "Tile schedule.xlsx"), value("1/16 in", "Previous notes.docx"));

    assertThat(Amendments.applied(values)).isEqualTo(values);
  }

  private static Value value(String words, String document) {
    return new Value(
        "grout.width",
        new Content.Words(words),
        false,
        words,
        Origin.ofDocument(document).withText(words),
        Scope.ENTRY,
        true);
  }
}
