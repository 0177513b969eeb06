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
import java.util.concurrent.ConcurrentHashMap;

/**
 * Writes records by their components, and reads them back through their constructors: a record that
 * gains a component needs no line here.
 */
final class RecordCodec {
  private final Map<Class<?>, Shape> shapes = new ConcurrentHashMap<>();

  private record Shape(Constructor<?> constructor, Method[] parts, Type[] types) {}

  void write(PackedOutput out, Object value, Type type) {
    if (type instanceof ParameterizedType generic) {
      collection(out, value, generic);
    } else if (type == String.class) {
      out.text((String) value);
    } else if (type == boolean.class) {
      out.flag((Boolean) value);
    } else if (type == int.class) {
      out.number((Integer) value);
    } else if (type == Integer.class) {
      out.numberOrNull((Integer) value);
    } else if (type == double.class) {
      long bits = Double.doubleToRawLongBits((Double) value);
      out.number((int) (bits >> 32));
      out.number((int) bits);
    } else {
      out.flag(value != null);
      if (value != null) object(out, value, (Class<?>) type);
    }
  }

  private void object(PackedOutput out, Object value, Class<?> type) {
    if (type.isEnum()) {
      out.number(((Enum<?>) value).ordinal());
    } else if (type.isSealed()) {
      Class<?>[] kinds = type.getPermittedSubclasses();
      int kind = List.of(kinds).indexOf(value.getClass());
      out.number(kind);
      record(out, value, kinds[kind]);
    } else {
      record(out, value, type);
    }
  }

  private void record(PackedOutput out, Object value, Class<?> type) {
    Shape shape = shape(type);
    for (int i = 0; i < shape.parts.length; i++) {
      try {
        write(out, shape.parts[i].invoke(value), shape.types[i]);
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  private void collection(PackedOutput out, Object value, ParameterizedType type) {
    Type[] of = type.getActualTypeArguments();
    if (value instanceof Map<?, ?> map) {
      out.number(map.size());
      map.forEach(
          (key, held) -> {
            write(out, key, of[0]);
            write(out, held, of[1]);
          });
    } else {
      Collection<?> items = (Collection<?>) value;
      out.number(items.size());
      for (Object item : items) write(out, item, of[0]);
    }
  }

  /**
   * @throws DamagedDocument when the bytes cannot be such a value
   */
  Object read(PackedInput in, Type type) throws DamagedDocument {
    if (type instanceof ParameterizedType generic) return collection(in, generic);
    if (type == String.class) return in.text();
    if (type == boolean.class) return in.flag();
    if (type == int.class) return in.number();
    if (type == Integer.class) return in.numberOrNull();
    if (type == double.class) {
      long high = in.number();
      return Double.longBitsToDouble(high << 32 | in.number() & 0xFFFF_FFFFL);
    }
    return in.flag() ? object(in, (Class<?>) type) : null;
  }

  private Object object(PackedInput in, Class<?> type) throws DamagedDocument {
    if (type.isEnum()) return in.oneOf(type.getEnumConstants());
    return record(in, type.isSealed() ? in.oneOf(type.getPermittedSubclasses()) : type);
  }

  private Object record(PackedInput in, Class<?> type) throws DamagedDocument {
    Shape shape = shape(type);
    Object[] parts = new Object[shape.types.length];
    for (int i = 0; i < parts.length; i++) parts[i] = read(in, shape.types[i]);
    try {
      return shape.constructor.newInstance(parts);
    } catch (ReflectiveOperationException e) {
      throw new DamagedDocument("holds what a " + type.getSimpleName() + " cannot be");
    }
  }

  private Object collection(PackedInput in, ParameterizedType type) throws DamagedDocument {
    Type[] of = type.getActualTypeArguments();
    int left = in.count();
    if (type.getRawType() == Map.class) {
      Map<Object, Object> map = new LinkedHashMap<>();
      for (; left > 0; left--) map.put(read(in, of[0]), read(in, of[1]));
      return map;
    }
    Collection<Object> items =
        type.getRawType() == Set.class ? new LinkedHashSet<>() : new ArrayList<>();
    for (; left > 0; left--) items.add(read(in, of[0]));
    return items;
  }

  private Shape shape(Class<?> type) {
    return shapes.computeIfAbsent(type, RecordCodec::shapeOf);
  }

  private static Shape shapeOf(Class<?> type) {
    RecordComponent[] components = type.getRecordComponents();
    if (components == null) throw new IllegalArgumentException(type + " is no record");
    Class<?>[] classes = new Class<?>[components.length];
    Method[] parts = new Method[components.length];
    Type[] types = new Type[components.length];
    for (int i = 0; i < components.length; i++) {
      classes[i] = components[i].getType();
      types[i] = components[i].getGenericType();
      parts[i] = components[i].getAccessor();
      parts[i].setAccessible(true);
    }
    try {
      Constructor<?> constructor = type.getDeclaredConstructor(classes);
      constructor.setAccessible(true);
      return new Shape(constructor, parts, types);
    } catch (NoSuchMethodException e) {
      throw new IllegalStateException(e);
    }
  }
}
