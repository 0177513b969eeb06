package clearbed.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TrialTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final DraftSet SET = Corpus.set("alderfen-baths");
  private static final Set<String> TAGS = SET.glass();

  private static Operator operator(String id) {
    return Operators.all().stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
  }

  private static Mutant mutant(String id) {
    return operator(id).on(SET).orElseThrow();
  }

  private static Reported finding(String check, String... tags) {
    return new Reported(check, Set.of(tags), true, "words");
  }

  private static Tally scored(String operator, Set<String> clean, Reported... reported) {
    Tally tally = new Tally();
    tally.score(mutant(operator), List.of(reported), clean);
    return tally;
  }

  @Test
  void aDefectReportedForEveryEntryIsFound() {
    Tally tally =
        scored("mockup-deleted", Set.of(), finding("mockup", TAGS.toArray(String[]::new)));
    assertThat(tally.line("mockup")).isEqualTo(new Tally.Line(1, 1, 0, 0));
    assertThat(tally.total().recall()).isEqualTo(1);
    assertThat(tally.total().precision()).isEqualTo(1);
  }

  @Test
  void aDefectReportedForSomeEntriesIsFoundInPart() {
    Tally tally = scored("mockup-deleted", Set.of(), finding("mockup", "GT-1"));
    assertThat(tally.line("mockup")).isEqualTo(new Tally.Line(1, 0, 1, 0));
    assertThat(tally.total().recall()).isZero();
  }

  @Test
  void aSilentToolFindsNothing() {
    assertThat(scored("mockup-deleted", Set.of()).total()).isEqualTo(new Tally.Line(1, 0, 0, 0));
  }

  @Test
  void aFindingThatNothingWarrantsIsAFalseAlarm() {
    Tally tally = scored("mockup-deleted", Set.of(), finding("coverage", "GT-1"));
    assertThat(tally.line("coverage")).isEqualTo(new Tally.Line(0, 0, 0, 1));
    assertThat(tally.line("coverage").precision()).isZero();
  }

  @Test
  void aNoteIsNoFalseAlarm() {
    Reported note = new Reported("coverage", Set.of("GT-1"), false, "words");
    assertThat(scored("mockup-deleted", Set.of(), note).line("coverage"))
        .isEqualTo(Tally.Line.NONE);
  }

  @Test
  void aFindingKnownFromTheCleanSetIsNotCountedAgain() {
    Reported known = finding("coverage", "GT-1");
    assertThat(scored("mockup-deleted", known.keys(), known).line("coverage"))
        .isEqualTo(Tally.Line.NONE);
  }

  @Test
  void aFindingThatTheCleanSetGaveTooIsNoSignOfTheDefect() {
    Reported always = finding("mockup", TAGS.toArray(String[]::new));
    assertThat(scored("mockup-deleted", always.keys(), always).line("mockup"))
        .isEqualTo(new Tally.Line(1, 0, 0, 0));
  }

  @Test
  void anEntryMoreThanIsDueMakesAFalseAlarm() {
    // Of this set, GT-1 is dry and needs no membrane.
    Tally tally =
        scored("membrane-deleted", Set.of(), finding("membrane", TAGS.toArray(String[]::new)));
    assertThat(tally.line("membrane")).isEqualTo(new Tally.Line(1, 1, 0, 1));
  }

  @Test
  void aRunCountsEveryFittingOperatorOnEverySetAndNamesWhatWasMissed() throws IOException {
    List<String> log = new ArrayList<>();
    Checker blind = (folder, rules) -> entries(JSON.createObjectNode());
    List<Operator> two = List.of(operator("mockup-deleted"), operator("slip-test-deleted"));
    Trial.Result result = new Trial(blind, List.of(SET), two, log::add).run();
    assertThat(result.mutants()).isEqualTo(1);
    assertThat(log).singleElement().asString().startsWith("missed: alderfen-baths, mockup-deleted");
    assertThat(result.entries()).isEmpty();
  }

  @Test
  void anUnseenSetCountsApartWhateverTheOperator() throws IOException {
    DraftSet unseen = Corpus.set("pellwater-market");
    Checker blind = (folder, rules) -> JSON.createObjectNode();
    List<Operator> both = List.of(operator("mockup-deleted"), operator("flatness-deleted"));
    Trial.Result result = new Trial(blind, List.of(SET, unseen), both, line -> {}).run();
    assertThat(both).extracting(Operator::heldBack).containsExactly(true, false);
    assertThat(result.unseen().total()).isEqualTo(new Tally.Line(2, 0, 0, 0));
    assertThat(result.tuned().total().plus(result.heldBack().total()).due()).isEqualTo(2);
  }

  @Test
  void aRunNamesEntriesThatWereNotFoundAndThoseThatAreNotGlass() throws IOException {
    Checker wrong =
        (folder, rules) -> {
          ObjectNode json = JSON.createObjectNode();
          json.putArray("entries").addObject().put("tag", "MR-1").put("glass", true);
          return json;
        };
    Trial.Result result = new Trial(wrong, List.of(SET), List.of(), line -> {}).run();
    assertThat(result.entries())
        .contains(
            "alderfen-baths: glass entry not found: GT-1",
            "alderfen-baths: taken for a glass entry: MR-1")
        .hasSize(5);
  }

  @Test
  void findingsAreReadWithTheirTagsAndSuppressedOnesLeftOut() throws IOException {
    String json =
        """
        {"findings": [
          {"check": "mockup", "level": "error", "tags": ["GT-1", "GT-2"], "message": "m"},
          {"check": "coverage", "level": "note", "tag": "GT-1", "message": "c"},
          {"check": "ridges", "level": "error", "tag": "GT-1", "suppressed": "agreed"}]}
        """;
    assertThat(Reported.of(JSON.readTree(json)))
        .containsExactly(
            new Reported("mockup", Set.of("GT-1", "GT-2"), true, "m"),
            new Reported("coverage", Set.of("GT-1"), false, "c"));
  }

  private static ObjectNode entries(ObjectNode json) {
    var entries = json.putArray("entries");
    TAGS.forEach(tag -> entries.addObject().put("tag", tag).put("glass", true));
    return json;
  }
}
