package clearbed.survey;

import clearbed.base.codec.DamagedRecord;
import clearbed.base.io.TemporaryFolder;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.StandardOpenOption;

/** Projects on disk until all are there: an archive of any length takes the memory of one. */
public final class Spool implements Surveys, AutoCloseable {
  private final TemporaryFolder folder = new TemporaryFolder();
  private final FileChannel file;
  private final long[] from;
  private final int[] length;
  private long end;

  /**
   * @param size number of projects
   * @throws IOException when there is no place for it
   */
  public Spool(int size) throws IOException {
    file =
        FileChannel.open(
            folder.newFile("survey"), StandardOpenOption.READ, StandardOpenOption.WRITE);
    from = new long[size];
    length = new int[size];
  }

  @Override
  public int size() {
    return from.length;
  }

  /**
   * @param index from 0
   * @throws IOException when it does not fit
   */
  public synchronized void put(int index, Surveyed project) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(SurveyedBytes.of(project));
    from[index] = end;
    length[index] = bytes.remaining();
    while (bytes.hasRemaining()) end += file.write(bytes, end);
  }

  @Override
  public Surveyed get(int index) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(length[index]);
    while (bytes.hasRemaining())
      if (file.read(bytes, from[index] + bytes.position()) < 0)
        throw new IOException("a temporary file was cut short; is the disk full?");
    try {
      return SurveyedBytes.read(bytes.array());
    } catch (DamagedRecord e) {
      throw new IOException("a temporary file " + e.getMessage(), e);
    }
  }

  @Override
  public void close() {
    try {
      file.close();
    } catch (IOException e) {
      // It goes with its folder.
    }
    folder.close();
  }
}
