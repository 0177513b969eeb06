package clearbed.report.workbook;

import java.util.List;

/** Words offered in the columns that people fill in. */
final class WordsToChoose {
  static final List<String> STATUS = clearbed.model.QuestionLog.Reply.STATUS;

  static final List<String> ASKED_OF =
      List.of(
          "Architect",
          "Engineer",
          "Specification writer",
          "Owner",
          "General contractor",
          "Tile contractor",
          "Tile supplier",
          "Mortar supplier");

  static final SheetSetup.Meaning MEANING =
      new SheetSetup.Meaning(
          "Status",
          "to ask: not sent yet. asked: sent. answered: settled, no longer open. dropped: not asked"
              + " any more; the finding stays open. An answer alone leaves it open.",
          true);

  static final SheetSetup.Meaning ANYBODY =
      new SheetSetup.Meaning(
          "Asked of",
          "Choose, or type anybody else. The letter puts the questions under this name.",
          false);

  private WordsToChoose() {}
}
