package clearbed.samples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** Writes the sample projects into {@code sample-specs}, or into the folder given. */
public final class WriteSamples {
  private WriteSamples() {}

  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments.length > 0 ? arguments[0] : "sample-specs");
    for (Map.Entry<String, byte[]> file : Samples.all().entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.write(path, file.getValue());
      System.out.println(path + "  " + file.getValue().length + " bytes");
    }
  }
}
