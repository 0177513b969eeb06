package clearbed.report.workbook;

import java.util.List;

/** Words offered in the columns that people fill in. */
final class Replies {
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

  private Replies() {}
}
