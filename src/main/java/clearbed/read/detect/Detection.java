package clearbed.read.detect;

import clearbed.read.source.Format;

/**
 * What a file turned out to be.
 *
 * @param format null when it is not read
 * @param ignored true when it is of no concern, false when it should have been readable
 * @param reason why it is not read, or empty
 */
public record Detection(Format format, boolean ignored, String reason) {

  static Detection as(Format format) {
    return new Detection(format, false, "");
  }

  static Detection ignore(String reason) {
    return new Detection(null, true, reason);
  }

  static Detection refuse(String reason) {
    return new Detection(null, false, reason);
  }
}
