package clearbed.track;

import java.util.List;
import java.util.Map;

/**
 * What people wrote into a letter or workbook that came back.
 *
 * @param replies by number of the question and heading of the column, in the order of the file
 * @param unplaced all else that is new in it
 */
record Returned(Map<Integer, Map<String, String>> replies, List<Unplaced> unplaced) {

  /**
   * Words that belong to no answer.
   *
   * @param place in the file
   * @param why they could not be placed
   */
  record Unplaced(String place, String text, String why) {}
}
