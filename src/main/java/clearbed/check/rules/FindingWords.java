package clearbed.check.rules;

import java.util.List;

/**
 * What a finding says beyond its rule; empty where the rule's own words will do.
 *
 * @param steps of a calculation, a line each
 */
public record FindingWords(
    String message, String found, String expected, List<String> steps, String question) {

  /** What takes no calculation, and asks as the rule does. */
  public static FindingWords of(String message, String found, String expected) {
    return new FindingWords(message, found, expected, List.of(), "");
  }
}
