package clearbed.survey;

import java.io.IOException;

/** The projects of a survey in the order of their names, each as often as it is asked for. */
public interface Surveys {
  int size();

  /**
   * @param index from 0
   * @throws IOException when it cannot be had
   */
  Surveyed get(int index) throws IOException;
}
