package clearbed.read.source;

/**
 * How far an archive is trusted.
 *
 * @param depth archives within archives, 1 for none inside the first
 * @param entries files in one archive
 * @param entryBytes size of one file, unpacked
 * @param totalBytes size of all files of one archive together, unpacked
 * @param ratio unpacked to packed size, looked at once a file is over {@link #FREE_BYTES}
 */
public record ArchiveLimits(int depth, int entries, long entryBytes, long totalBytes, int ratio) {
  static final long FREE_BYTES = 10L << 20;

  public static ArchiveLimits standard() {
    return new ArchiveLimits(2, 10_000, 512L << 20, 4L << 30, 200);
  }
}
