package clearbed.docs;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.check.Checker;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSets;
import clearbed.recognise.vocabulary.Vocabulary;
import java.nio.file.Files;
import java.util.List;
import org.junit.jupiter.api.Test;

class CheckCatalogueTest {

  @Test
  void thePageOfTheChecksSaysWhatTheRuleFilesSay() throws Exception {
    if (Boolean.getBoolean("catalogue.write")) WriteCheckCatalogue.main(new String[0]);
    assertThat(Files.readString(WriteCheckCatalogue.PAGE))
        .as("a rule changed; run: mvn -q test -Dtest=CheckCatalogueTest -Dcatalogue.write=true")
        .isEqualTo(CheckCatalogue.ofTheRuleSets().markdown());
  }

  @Test
  void everyCheckOfEverySetHasItsPlaceOnThePage() throws Exception {
    String page = CheckCatalogue.ofTheRuleSets().markdown();
    RuleSets sets = Checker.ruleSets(Vocabulary.standard());
    for (String set : List.of("north-america", "iso-en")) {
      for (Rule rule : sets.load(set, List.of()).rules()) {
        assertThat(page).containsOnlyOnce("\n### " + rule.id() + "\n");
      }
    }
  }
}
