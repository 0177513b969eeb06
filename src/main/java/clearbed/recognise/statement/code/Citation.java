package clearbed.recognise.statement.code;

import clearbed.model.document.Origin;
import clearbed.model.value.Content;

/**
 * A standard or guideline cited in a text.
 *
 * @param standard canonical designation and edition
 * @param asWritten the words, typing slips included
 * @param listed true when it stands in a list of references rather than in a requirement
 */
public record Citation(Content.Standard standard, String asWritten, Origin origin, boolean listed) {
  public Citation at(Origin place) {
    return new Citation(standard, asWritten, place, listed);
  }
}
