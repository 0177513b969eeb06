package clearbed.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;

/** Checks a folder of documents and gives the findings in the tool's JSON. */
@FunctionalInterface
interface Checker {
  /**
   * @param rules name of the bundled rule set
   * @throws IOException when the tool could not be run or gave no findings file
   */
  JsonNode check(Path folder, String rules) throws IOException;
}
