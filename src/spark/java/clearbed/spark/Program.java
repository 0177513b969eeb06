package clearbed.spark;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import java.util.function.IntFunction;

/**
 * Clearbed as it was unpacked on this machine, loaded beside Spark: the two want other versions of
 * the same libraries. One for each process, as its rules take a second to read.
 */
final class Program {
  private static Program only;

  private final Object parts;

  private Program(Path folder, List<String> options) throws Exception {
    System.setProperty("clearbed.home", folder.toString());
    // The jar names its libraries; nothing of Spark is to be seen from there.
    URL jar = folder.resolve("lib/clearbed.jar").toUri().toURL();
    ClassLoader classes = new URLClassLoader(new URL[] {jar}, ClassLoader.getPlatformClassLoader());
    Class<?> type = classes.loadClass("clearbed.cli.survey.SurveyParts");
    parts = type.getConstructor(List.class).newInstance(options);
  }

  /** The one of this process; a process has one set of options. */
  static synchronized Program of(Path folder, List<String> options) throws Exception {
    if (only == null) only = new Program(folder, options);
    return only;
  }

  String rules() throws Exception {
    return (String) call("rules");
  }

  @SuppressWarnings("unchecked")
  List<String> projects(Function<String, List<String>> names) throws Exception {
    return (List<String>) call("projects", names);
  }

  byte[] check(String name, Path place) throws Exception {
    return (byte[]) call("check", name, place);
  }

  byte[] notChecked(String name, String why) throws Exception {
    return (byte[]) call("notChecked", name, why);
  }

  boolean isLasting(byte[] result) throws Exception {
    return (Boolean) call("isLasting", (Object) result);
  }

  String write(IntFunction<byte[]> results, String archive, Path folder) throws Exception {
    return (String) call("write", results, archive, folder);
  }

  private Object call(String name, Object... arguments) throws Exception {
    for (Method method : parts.getClass().getMethods())
      if (method.getName().equals(name)) return called(method, arguments);
    throw new IOException("this Clearbed has no " + name + "; build it and the adapter together");
  }

  private Object called(Method method, Object... arguments) throws Exception {
    try {
      return method.invoke(parts, arguments);
    } catch (InvocationTargetException e) {
      if (e.getCause() instanceof Error error) throw error;
      throw e.getCause() instanceof Exception known ? known : e;
    }
  }
}
