package clearbed.recognise.vocabulary;

import java.util.List;

/**
 * What the vocabulary knows of a standard.
 *
 * @param states attributes that citing it states
 * @param families the part of the work each of those goes with; empty when it does not matter
 * @param status current, withdrawn or superseded
 * @param edition year of the edition in force; empty when unknown
 * @param codes the classes that are of it, as a regular expression; empty for none
 * @param undatedInUse true where it was replaced and is still cited, without a year, for what
 *     replaced it
 */
public record StandardInfo(
    String designation,
    String subject,
    List<String> states,
    List<String> families,
    String status,
    String successor,
    String edition,
    String mark,
    String codes,
    boolean undatedInUse) {
  public StandardInfo {
    states = states == null ? List.of() : List.copyOf(states);
    families = families == null ? List.of() : List.copyOf(families);
    successor = successor == null ? "" : successor;
  }

  /** True for an edition, by its year in four figures, that a later one has replaced. */
  public boolean replaces(String cited) {
    return !edition.isEmpty() && cited.matches("(?:19|20)\\d\\d.*") && cited.compareTo(edition) < 0;
  }

  public boolean current() {
    return "current".equals(status);
  }
}
