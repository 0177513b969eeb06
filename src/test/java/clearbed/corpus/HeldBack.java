package clearbed.corpus;

import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;

/** Which sets and operators the tool must not be tuned on: about a third, by their names alone. */
final class HeldBack {
  private HeldBack() {}

  static boolean of(String name) {
    CRC32 sum = new CRC32();
    sum.update(name.getBytes(StandardCharsets.UTF_8));
    return sum.getValue() % 3 == 0;
  }
}
