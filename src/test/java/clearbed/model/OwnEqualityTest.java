package clearbed.model;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.recognise.Limits;
import clearbed.recognise.Statement;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Records whose equality is written out must not forget a component. */
class OwnEqualityTest {
  private static final Origin PLACE =
      new Origin("a.csv", "Tile", "B7", 3, 4, "2.3 B", "grey", "comment");

  private static Limits limits(boolean glass) {
    return new Limits(Set.of(), glass, Set.of(), Set.of(), Set.of(), Set.of(), Map.of());
  }

  static Stream<Record> records() {
    Content grey = new Content.Term("grey");
    return Stream.of(
        PLACE,
        new Value("grout.colour", grey, false, "grey", PLACE, Scope.ARTICLE, false),
        new Statement("grout.colour", grey, false, "grey", PLACE, limits(false)));
  }

  private static Object other(Object value) {
    if (value instanceof String text) return text + " other";
    if (value instanceof Integer number) return number + 1;
    if (value instanceof Boolean flag) return !flag;
    if (value instanceof Scope) return Scope.GENERAL;
    if (value instanceof Content) return new Content.Term("white");
    if (value instanceof Origin place) return place.withCell("C7");
    if (value instanceof Limits) return limits(true);
    throw new IllegalArgumentException("no other of " + value.getClass());
  }

  @ParameterizedTest
  @MethodSource("records")
  void every_component_counts_and_equal_ones_have_one_hash(Record one) throws Exception {
    RecordComponent[] components = one.getClass().getRecordComponents();
    Class<?>[] types = Stream.of(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
    Constructor<?> making = one.getClass().getDeclaredConstructor(types);
    Object[] parts = new Object[components.length];
    for (int i = 0; i < parts.length; i++) parts[i] = components[i].getAccessor().invoke(one);
    Object same = making.newInstance(parts);
    assertThat(same).isEqualTo(one).hasSameHashCodeAs(one);
    for (int i = 0; i < parts.length; i++) {
      Object[] changed = parts.clone();
      changed[i] = other(parts[i]);
      assertThat(making.newInstance(changed)).as(components[i].getName()).isNotEqualTo(one);
    }
  }
}
