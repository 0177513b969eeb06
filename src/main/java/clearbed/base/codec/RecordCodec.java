package clearbed.base.codec;

import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * Serialises records by their components, and reads them back through their constructors: a record
 * that gains a component needs no line here. Thread-safe; equal values give equal bytes.
 *
 * <p>Components may be texts, {@code int}, {@code Integer}, {@code double}, {@code boolean}, enums,
 * lists, sets, maps, records and sealed interfaces of records.
 */
public final class RecordCodec {
  private static final int NULL = 0;
  private static final int NEW = 1;
  private static final int FIRST = 2;

  private final Set<Class<?>> shared;
  private final Map<Class<?>, Shape> shapes = new ConcurrentHashMap<>();

  /**
   * @param shared types whose equal values are written once and referred to from then on
   */
  public RecordCodec(Class<?>... shared) {
    this.shared = Set.of(shared);
  }

  /**
   * @param shared by the order in which they were first written
   */
  private record SharingOutput(RecordOutput packed, Map<Object, Integer> shared) {}

  /**
   * @param shared in the order in which they were first read
   */
  private record SharingInput(RecordInput packed, List<Object> shared) {}

  /** Asked of a class once: Java answers slowly whether it is sealed, and copies every answer. */
  private record Shape(
      Object[] constants,
      Class<?>[] kinds,
      Constructor<?> constructor,
      Method[] parts,
      Component[] types) {
    Shape(Object[] constants, Class<?>[] kinds) {
      this(constants, kinds, null, null, null);
    }
  }

  private enum Encoding {
    TEXT,
    FLAG,
    NUMBER,
    NUMBER_OR_NULL,
    REAL,
    MAP,
    SET,
    LIST,
    OBJECT
  }

  /**
   * How a component is written.
   *
   * @param of what a collection holds: items, or keys and values
   */
  private record Component(Encoding encoding, Class<?> type, Component[] of) {
    static Component of(Type type) {
      if (type instanceof ParameterizedType generic) {
        Type[] held = generic.getActualTypeArguments();
        Component[] of = new Component[held.length];
        for (int i = 0; i < of.length; i++) of[i] = of(held[i]);
        Class<?> raw = (Class<?>) generic.getRawType();
        Encoding encoding =
            raw == Map.class ? Encoding.MAP : raw == Set.class ? Encoding.SET : Encoding.LIST;
        return new Component(encoding, raw, of);
      }
      Encoding encoding = Encoding.OBJECT;
      if (type == String.class) encoding = Encoding.TEXT;
      if (type == boolean.class) encoding = Encoding.FLAG;
      if (type == int.class) encoding = Encoding.NUMBER;
      if (type == Integer.class) encoding = Encoding.NUMBER_OR_NULL;
      if (type == double.class) encoding = Encoding.REAL;
      return new Component(encoding, (Class<?>) type, null);
    }
  }

  /** Writes a value, which is not null, behind what was written before. */
  public <T> void write(RecordOutput out, T value, Class<T> type) {
    write(new SharingOutput(out, new HashMap<>()), value, Component.of(type));
  }

  private void write(SharingOutput out, Object value, Component component) {
    switch (component.encoding) {
      case TEXT -> out.packed.text((String) value);
      case FLAG -> out.packed.flag((Boolean) value);
      case NUMBER -> out.packed.number((Integer) value);
      case NUMBER_OR_NULL -> out.packed.numberOrNull((Integer) value);
      case REAL -> {
        long bits = Double.doubleToRawLongBits((Double) value);
        out.packed.number((int) (bits >> 32));
        out.packed.number((int) bits);
      }
      case MAP -> map(out, (Map<?, ?>) value, component);
      case SET -> items(out, steady((Collection<?>) value), component);
      case LIST -> items(out, (Collection<?>) value, component);
      case OBJECT -> object(out, value, component.type);
    }
  }

  private void map(SharingOutput out, Map<?, ?> map, Component component) {
    out.packed.number(map.size());
    for (Object key : steady(map.keySet())) {
      write(out, key, component.of[0]);
      write(out, map.get(key), component.of[1]);
    }
  }

  private void items(SharingOutput out, Collection<?> items, Component component) {
    out.packed.number(items.size());
    for (Object item : items) write(out, item, component.of[0]);
  }

  /**
   * The same in every run, so that equal values give equal bytes: the sets of Java's library that
   * cannot be changed have another order each time the program starts.
   */
  private static Collection<?> steady(Collection<?> items) {
    boolean words = items.stream().allMatch(item -> item instanceof String);
    if (!words || items.size() < 2 || items instanceof LinkedHashSet) return items;
    return new TreeSet<>(items);
  }

  private void object(SharingOutput out, Object value, Class<?> type) {
    if (value == null) {
      out.packed.number(NULL);
      return;
    }
    boolean isShared = shared.contains(type);
    Integer before = isShared ? out.shared.get(value) : null;
    out.packed.number(before == null ? NEW : FIRST + before);
    if (before != null) return;
    object(out, value, shape(type));
    // Behind what it holds, as the reader comes to know it no earlier.
    if (isShared) out.shared.put(value, out.shared.size());
  }

  private void object(SharingOutput out, Object value, Shape shape) {
    if (shape.constants != null) {
      out.packed.number(((Enum<?>) value).ordinal());
    } else if (shape.kinds != null) {
      int kind = List.of(shape.kinds).indexOf(value.getClass());
      out.packed.number(kind);
      record(out, value, shape(shape.kinds[kind]));
    } else {
      record(out, value, shape);
    }
  }

  private void record(SharingOutput out, Object value, Shape shape) {
    for (int i = 0; i < shape.parts.length; i++) {
      try {
        write(out, shape.parts[i].invoke(value), shape.types[i]);
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  /**
   * The value that was written next; never null.
   *
   * @throws DamagedRecord when the bytes cannot be such a value
   */
  public <T> T read(RecordInput in, Class<T> type) throws DamagedRecord {
    Object value = read(new SharingInput(in, new ArrayList<>()), Component.of(type));
    if (value == null) throw new DamagedRecord("holds nothing");
    return type.cast(value);
  }

  private Object read(SharingInput in, Component component) throws DamagedRecord {
    switch (component.encoding) {
      case TEXT:
        return in.packed.text();
      case FLAG:
        return in.packed.flag();
      case NUMBER:
        return in.packed.number();
      case NUMBER_OR_NULL:
        return in.packed.numberOrNull();
      case REAL:
        long high = in.packed.number();
        return Double.longBitsToDouble(high << 32 | in.packed.number() & 0xFFFF_FFFFL);
      case MAP:
        return map(in, component);
      case SET:
        return items(in, component, Set.of(), LinkedHashSet::new);
      case LIST:
        return items(in, component, List.of(), ArrayList::new);
      default:
        return object(in, component.type);
    }
  }

  // Most collections are empty, and many: what is limited to nothing has six of them.

  private Map<Object, Object> map(SharingInput in, Component component) throws DamagedRecord {
    int count = in.packed.count();
    if (count == 0) return Map.of();
    Map<Object, Object> map = new LinkedHashMap<>();
    for (; count > 0; count--) map.put(read(in, component.of[0]), read(in, component.of[1]));
    return map;
  }

  private Collection<Object> items(
      SharingInput in,
      Component component,
      Collection<Object> none,
      Supplier<Collection<Object>> some)
      throws DamagedRecord {
    int count = in.packed.count();
    if (count == 0) return none;
    Collection<Object> items = some.get();
    for (; count > 0; count--) items.add(read(in, component.of[0]));
    return items;
  }

  private Object object(SharingInput in, Class<?> type) throws DamagedRecord {
    int reference = in.packed.number();
    if (reference == NULL) return null;
    boolean isShared = shared.contains(type);
    if (reference == NEW) {
      Object value = object(in, shape(type));
      if (isShared) in.shared.add(value);
      return value;
    }
    int before = reference - FIRST;
    if (!isShared || before < 0 || before >= in.shared.size())
      throw new DamagedRecord("refers to an unknown value");
    return in.shared.get(before);
  }

  private Object object(SharingInput in, Shape shape) throws DamagedRecord {
    if (shape.constants != null) return in.packed.oneOf(shape.constants);
    return record(in, shape.kinds == null ? shape : shape(in.packed.oneOf(shape.kinds)));
  }

  private Object record(SharingInput in, Shape shape) throws DamagedRecord {
    Object[] parts = new Object[shape.types.length];
    for (int i = 0; i < parts.length; i++) parts[i] = read(in, shape.types[i]);
    try {
      return shape.constructor.newInstance(parts);
    } catch (ReflectiveOperationException e) {
      String name = shape.constructor.getDeclaringClass().getSimpleName();
      throw new DamagedRecord("holds what a " + name + " cannot be");
    }
  }

  private Shape shape(Class<?> type) {
    Shape known = shapes.get(type);
    return known == null ? shapes.computeIfAbsent(type, RecordCodec::shapeOf) : known;
  }

  private static Shape shapeOf(Class<?> type) {
    if (type.isEnum()) return new Shape(type.getEnumConstants(), null);
    if (type.isSealed()) return new Shape(null, type.getPermittedSubclasses());
    RecordComponent[] components = type.getRecordComponents();
    if (components == null) throw new IllegalArgumentException(type + " is no record");
    Class<?>[] classes = new Class<?>[components.length];
    Method[] parts = new Method[components.length];
    Component[] types = new Component[components.length];
    for (int i = 0; i < components.length; i++) {
      classes[i] = components[i].getType();
      types[i] = Component.of(components[i].getGenericType());
      parts[i] = components[i].getAccessor();
      parts[i].setAccessible(true);
    }
    try {
      Constructor<?> constructor = type.getDeclaredConstructor(classes);
      constructor.setAccessible(true);
      return new Shape(null, null, constructor, parts, types);
    } catch (NoSuchMethodException e) {
      throw new IllegalStateException(e);
    }
  }
}
