package clearbed.report.workbook.calculation;

import java.util.List;
import java.util.Map;

/**
 * Where the block of a calculation stands, in rows from 0.
 *
 * @param steps row of the first step
 * @param result row of the last step
 * @param verdict row of the verdict, or 0 when there is none
 * @param verdictWords as computed; empty when there is none
 * @param chart first row of the curve's table, or 0 when there is none
 * @param typed what people typed in place of inputs, in words
 * @param end the row behind the block
 * @param cells the cell of each input and step, by its name
 */
record BlockRows(
    int title,
    int steps,
    int result,
    int verdict,
    String verdictWords,
    int chart,
    List<String> typed,
    int end,
    Map<String, String> cells) {}
