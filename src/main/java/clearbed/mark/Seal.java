package clearbed.mark;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Kind and digest as one text, such as a document property holds. */
record Seal(OutputKind kind, String digest) {
  /** Name of the custom document property. */
  static final String PROPERTY = "ClearbedOutput";

  /** Stands for a digest until it is known. */
  static final String UNKNOWN = "0".repeat(Sha256.DIGITS);

  static final String ALGORITHM = " sha-256:";

  private static final Pattern FORM = Pattern.compile("([a-z]+)" + ALGORITHM + "([0-9a-f]{64})");

  /** Null for a text that is no seal. */
  static Seal of(String text) {
    Matcher form = FORM.matcher(text == null ? "" : text.strip());
    OutputKind kind = form.matches() ? OutputKind.of(form.group(1)) : null;
    return kind == null ? null : new Seal(kind, form.group(2));
  }

  String text() {
    return kind.word() + ALGORITHM + digest;
  }

  OwnOutput over(String found) {
    return new OwnOutput(kind, digest.equals(found));
  }
}
