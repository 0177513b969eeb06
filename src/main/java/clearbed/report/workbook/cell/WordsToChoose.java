package clearbed.report.workbook.cell;

import java.util.List;

/** Words offered in the columns that people fill in. */
public final class WordsToChoose {
  public static final List<String> STATUS = clearbed.model.report.QuestionLog.Reply.STATUS;

  public static final List<String> ASKED_OF =
      List.of(
          "Architect",
          "Engineer",
          "Specification writer",
          "Owner",
          "General contractor",
          "Tile contractor",
          "Tile supplier",
          "Mortar supplier");

  public static final SheetSetup.Meaning MEANING =
      new SheetSetup.Meaning(
          "Status",
          "to ask: not sent yet. asked: sent. answered: settled, no longer open. dropped: not asked"
              + " any more; the finding stays open. An answer alone leaves it open.",
          true);

  public static final SheetSetup.Meaning ANYBODY =
      new SheetSetup.Meaning(
          "Asked of",
          "Choose, or type anybody else. The letter puts the questions under this name.",
          false);

  private WordsToChoose() {}
}
