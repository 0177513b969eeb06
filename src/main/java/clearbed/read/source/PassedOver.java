package clearbed.read.source;

import java.util.Locale;
import java.util.Set;

/** Files that are no documents, told by their names alone. */
final class PassedOver {
  private static final Set<String> SYSTEM_FILES = Set.of("thumbs.db", "desktop.ini", "ehthumbs.db");

  private PassedOver() {}

  /** Why a file of this name is passed over, or null. */
  static String reason(String name, boolean named) {
    if (name.startsWith("~$") || name.startsWith(".~lock.")) return "lock file of an open document";
    if (SYSTEM_FILES.contains(name.toLowerCase(Locale.ROOT))) return "file of the operating system";
    if (name.startsWith(".") && !named) return "hidden file";
    return null;
  }
}
