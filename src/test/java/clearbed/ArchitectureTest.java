package clearbed;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.conditions.ArchConditions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The one-way flow from documents to findings, room by room: {@code rooms.txt} has every package in
 * the order of the flow, each with its doors, the types that other packages may use. {@code
 * -Drooms.write=true} writes the doors anew; the order is only ever changed by hand.
 */
@AnalyzeClasses(packages = "clearbed", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  private static final Path ROOMS = Path.of("src/test/resources/clearbed/rooms.txt");

  @ArchTest
  static void a_package_uses_only_those_before_it(JavaClasses all) throws IOException {
    List<String> order = new ArrayList<>(rooms().keySet());
    SortedSet<String> upward = new TreeSet<>();
    for (JavaClass user : all)
      for (JavaClass used : usedBy(user))
        if (order.indexOf(used.getPackageName()) > order.indexOf(user.getPackageName()))
          upward.add(user.getName() + " uses " + used.getName());
    assertEquals(List.of(), List.copyOf(upward), "a room uses only those above it in " + ROOMS);
  }

  @ArchTest
  static void every_package_is_a_room(JavaClasses all) throws IOException {
    SortedSet<String> packages = new TreeSet<>();
    for (JavaClass one : all) packages.add(one.getPackageName());
    assertEquals(
        packages, new TreeSet<>(rooms().keySet()), "give each package its place in " + ROOMS);
  }

  @ArchTest
  static void other_packages_come_in_by_the_doors(JavaClasses all) throws IOException {
    Map<String, SortedSet<String>> doors = new TreeMap<>();
    for (JavaClass user : all)
      for (JavaClass used : usedBy(user))
        if (!used.getPackageName().equals(user.getPackageName()))
          doors
              .computeIfAbsent(used.getPackageName(), room -> new TreeSet<>())
              .add(outermost(used).getSimpleName());
    Map<String, SortedSet<String>> found = new LinkedHashMap<>();
    for (String room : rooms().keySet()) found.put(room, doors.getOrDefault(room, new TreeSet<>()));
    if (Boolean.getBoolean("rooms.write")) Files.writeString(ROOMS, written(found));
    Map<String, SortedSet<String>> known = rooms();
    SortedSet<String> changes = new TreeSet<>();
    found.forEach(
        (room, now) -> {
          for (String door : now)
            if (!known.get(room).contains(door)) changes.add("+ " + room + "." + door);
          for (String door : known.get(room))
            if (!now.contains(door)) changes.add("- " + room + "." + door);
        });
    assertEquals(
        List.of(),
        List.copyOf(changes),
        "doors changed; if that is meant: mvn -q test -Dtest=ArchitectureTest -Drooms.write=true");
  }

  @ArchTest
  static final ArchRule only_the_command_line_ends_the_process =
      classes()
          .that(
              DescribedPredicate.describe(
                  "are not of the command line",
                  (JavaClass c) -> !c.getPackageName().startsWith("clearbed.cli")))
          .should(ArchConditions.not(ArchConditions.callMethod(System.class, "exit", int.class)));

  /** Doors by room, in the order of the file. */
  private static Map<String, SortedSet<String>> rooms() throws IOException {
    Map<String, SortedSet<String>> out = new LinkedHashMap<>();
    SortedSet<String> doors = new TreeSet<>();
    for (String line : Files.readAllLines(ROOMS))
      if (line.startsWith("  ")) doors.addAll(List.of(line.strip().split(" ")));
      else if (!line.isBlank()) out.put(line.strip(), doors = new TreeSet<>());
    return out;
  }

  private static String written(Map<String, SortedSet<String>> rooms) {
    StringBuilder out = new StringBuilder();
    rooms.forEach(
        (room, doors) -> {
          out.append(room).append('\n');
          StringBuilder line = new StringBuilder();
          for (String door : doors) {
            if (line.length() + door.length() > 97) {
              out.append(" ").append(line).append('\n');
              line.setLength(0);
            }
            line.append(' ').append(door);
          }
          if (!line.isEmpty()) out.append(" ").append(line).append('\n');
        });
    return out.toString();
  }

  private static List<JavaClass> usedBy(JavaClass user) {
    return user.getDirectDependenciesFromSelf().stream()
        .map(dependency -> dependency.getTargetClass().getBaseComponentType())
        .filter(used -> used.getName().startsWith("clearbed."))
        .toList();
  }

  private static JavaClass outermost(JavaClass one) {
    return one.getEnclosingClass().map(ArchitectureTest::outermost).orElse(one);
  }
}
