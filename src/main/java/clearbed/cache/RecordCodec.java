package clearbed.cache;

import clearbed.read.DamagedDocument;
import clearbed.read.PackedInput;
import clearbed.read.PackedOutput;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Writes records by their components, and reads them back through their constructors: a record that
 * gains a component needs no line here.
 */
final class RecordCodec {
  private final Map<Class<?>, Shape> shapes = new ConcurrentHashMap<>();

  /** Asked of a class once: Java answers slowly whether it is sealed, and copies every answer. */
  private record Shape(
      Object[] constants,
      Class<?>[] kinds,
      Constructor<?> constructor,
      Method[] parts,
      Part[] types) {
    Shape(Object[] constants, Class<?>[] kinds) {
      this(constants, kinds, null, null, null);
    }
  }

  private enum Form {
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
  private record Part(Form form, Class<?> type, Part[] of) {
    static Part of(Type type) {
      if (type instanceof ParameterizedType generic) {
        Type[] held = generic.getActualTypeArguments();
        Part[] of = new Part[held.length];
        for (int i = 0; i < of.length; i++) of[i] = of(held[i]);
        Class<?> raw = (Class<?>) generic.getRawType();
        Form form = raw == Map.class ? Form.MAP : raw == Set.class ? Form.SET : Form.LIST;
        return new Part(form, raw, of);
      }
      Form form = Form.OBJECT;
      if (type == String.class) form = Form.TEXT;
      if (type == boolean.class) form = Form.FLAG;
      if (type == int.class) form = Form.NUMBER;
      if (type == Integer.class) form = Form.NUMBER_OR_NULL;
      if (type == double.class) form = Form.REAL;
      return new Part(form, (Class<?>) type, null);
    }
  }

  void write(PackedOutput out, Object value, Class<?> type) {
    write(out, value, Part.of(type));
  }

  private void write(PackedOutput out, Object value, Part part) {
    switch (part.form) {
      case TEXT -> out.text((String) value);
      case FLAG -> out.flag((Boolean) value);
      case NUMBER -> out.number((Integer) value);
      case NUMBER_OR_NULL -> out.numberOrNull((Integer) value);
      case REAL -> {
        long bits = Double.doubleToRawLongBits((Double) value);
        out.number((int) (bits >> 32));
        out.number((int) bits);
      }
      case MAP -> map(out, (Map<?, ?>) value, part);
      case SET -> items(out, steady((Collection<?>) value), part);
      case LIST -> items(out, (Collection<?>) value, part);
      case OBJECT -> {
        out.flag(value != null);
        if (value != null) object(out, value, shape(part.type));
      }
    }
  }

  private void map(PackedOutput out, Map<?, ?> map, Part part) {
    out.number(map.size());
    for (Object key : steady(map.keySet())) {
      write(out, key, part.of[0]);
      write(out, map.get(key), part.of[1]);
    }
  }

  private void items(PackedOutput out, Collection<?> items, Part part) {
    out.number(items.size());
    for (Object item : items) write(out, item, part.of[0]);
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

  private void object(PackedOutput out, Object value, Shape shape) {
    if (shape.constants != null) {
      out.number(((Enum<?>) value).ordinal());
    } else if (shape.kinds != null) {
      int kind = List.of(shape.kinds).indexOf(value.getClass());
      out.number(kind);
      record(out, value, shape(shape.kinds[kind]));
    } else {
      record(out, value, shape);
    }
  }

  private void record(PackedOutput out, Object value, Shape shape) {
    for (int i = 0; i < shape.parts.length; i++) {
      try {
        write(out, shape.parts[i].invoke(value), shape.types[i]);
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  /**
   * @throws DamagedDocument when the bytes cannot be such a value
   */
  Object read(PackedInput in, Class<?> type) throws DamagedDocument {
    return read(in, Part.of(type));
  }

  private Object read(PackedInput in, Part part) throws DamagedDocument {
    switch (part.form) {
      case TEXT:
        return in.text();
      case FLAG:
        return in.flag();
      case NUMBER:
        return in.number();
      case NUMBER_OR_NULL:
        return in.numberOrNull();
      case REAL:
        long high = in.number();
        return Double.longBitsToDouble(high << 32 | in.number() & 0xFFFF_FFFFL);
      case MAP:
        return map(in, part);
      case SET:
        return items(in, part, new LinkedHashSet<>());
      case LIST:
        return items(in, part, new ArrayList<>());
      default:
        return in.flag() ? object(in, shape(part.type)) : null;
    }
  }

  private Map<Object, Object> map(PackedInput in, Part part) throws DamagedDocument {
    Map<Object, Object> map = new LinkedHashMap<>();
    for (int left = in.count(); left > 0; left--) {
      map.put(read(in, part.of[0]), read(in, part.of[1]));
    }
    return map;
  }

  private Collection<Object> items(PackedInput in, Part part, Collection<Object> items)
      throws DamagedDocument {
    for (int left = in.count(); left > 0; left--) items.add(read(in, part.of[0]));
    return items;
  }

  private Object object(PackedInput in, Shape shape) throws DamagedDocument {
    if (shape.constants != null) return in.oneOf(shape.constants);
    return record(in, shape.kinds == null ? shape : shape(in.oneOf(shape.kinds)));
  }

  private Object record(PackedInput in, Shape shape) throws DamagedDocument {
    Object[] parts = new Object[shape.types.length];
    for (int i = 0; i < parts.length; i++) parts[i] = read(in, shape.types[i]);
    try {
      return shape.constructor.newInstance(parts);
    } catch (ReflectiveOperationException e) {
      String name = shape.constructor.getDeclaringClass().getSimpleName();
      throw new DamagedDocument("holds what a " + name + " cannot be");
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
    Part[] types = new Part[components.length];
    for (int i = 0; i < components.length; i++) {
      classes[i] = components[i].getType();
      types[i] = Part.of(components[i].getGenericType());
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
