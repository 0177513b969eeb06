package clearbed.report.workbook.typed;

import clearbed.model.report.QuestionLog;
import java.io.IOException;
import java.util.Map;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * What is known of the workbook that is carried on before it is opened to be written in.
 *
 * @param lines as that issue wrote them, by finding id; empty when that is not known
 * @param typed what people typed on the sheets that are written anew
 */
public record Earlier(Map<String, QuestionLog.LogLine> lines, TypedCells typed) {

  public static Earlier of(QuestionLog log) throws IOException {
    if (!log.carries()) return new Earlier(Map.of(), TypedCells.none());
    try (XSSFWorkbook ledger = EarlierWorkbook.openLedger(log.workbook())) {
      return new Earlier(Ledger.read(ledger), TypedCells.of(log.workbook(), ledger));
    }
  }
}
