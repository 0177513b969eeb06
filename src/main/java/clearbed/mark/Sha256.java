package clearbed.mark;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Digests as the marks hold them: 64 hexadecimal digits. */
public final class Sha256 {
  static final int DIGITS = 64;

  private Sha256() {}

  /** A digest of nothing yet. */
  public static MessageDigest begun() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Of all that it was given, in hexadecimal. */
  public static String hex(MessageDigest digest) {
    return HexFormat.of().formatHex(digest.digest());
  }

  static String of(byte[] bytes) {
    MessageDigest digest = begun();
    digest.update(bytes);
    return hex(digest);
  }
}
