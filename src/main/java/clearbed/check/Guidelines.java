package clearbed.check;

import clearbed.calc.MovementGuideline;
import clearbed.recognise.StandardFiles;
import java.io.IOException;

/** Loads the movement joint guideline that a rule set names. */
final class Guidelines {
  private Guidelines() {}

  /**
   * @throws RuleFileException naming file, line and reason
   */
  static MovementGuideline load(String path) throws RuleFileException {
    try {
      return MovementGuideline.read(StandardFiles.open(path));
    } catch (IOException e) {
      throw new RuleFileException(e.getMessage());
    }
  }
}
