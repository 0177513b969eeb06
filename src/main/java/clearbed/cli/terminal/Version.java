package clearbed.cli.terminal;

import picocli.CommandLine.IVersionProvider;

/** The version, from the jar. */
public final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    return new String[] {"clearbed " + number()};
  }

  public static String number() {
    String version = Version.class.getPackage().getImplementationVersion();
    return version == null ? "development" : version;
  }
}
