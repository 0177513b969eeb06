package clearbed.calc;

import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.recognise.StandardFiles;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Thermal expansion of common materials, from {@code rulesets/guidelines/expansion.yaml}.
 *
 * @param materials in the order of the file
 */
public record Expansions(List<Material> materials) {

  public Expansions {
    materials = List.copyOf(materials);
  }

  /**
   * @param expansion coefficient, or the two ends that the source gives
   * @param source where it is published, with its mark
   */
  public record Material(String name, List<String> also, Interval expansion, String source) {
    public Material {
      also = List.copyOf(also);
    }

    /** The coefficient as a default of the rule set. */
    public Given given() {
      return Given.assumed(expansion, name + ", " + source);
    }

    private boolean isCalled(String word) {
      return name.equalsIgnoreCase(word) || also.stream().anyMatch(word::equalsIgnoreCase);
    }
  }

  private record File(List<Line> materials) {}

  private record Line(
      Words material, List<Words> also, Words expansion, Words upTo, Words source) {}

  /**
   * Reads the table.
   *
   * @throws IOException with file, line and reason when it cannot be understood
   */
  public static Expansions read(String name, byte[] bytes) throws IOException {
    return read(new StandardFiles.Source(name, bytes, true));
  }

  private static Expansions read(StandardFiles.Source source) throws IOException {
    YamlFile yaml = new YamlFile(source.name());
    File file = yaml.read(source, File.class);
    if (file.materials == null || file.materials.isEmpty()) {
      throw yaml.wrong(0, "no materials; give at least one under 'materials'");
    }
    List<Material> materials = new ArrayList<>();
    for (Line line : file.materials) {
      List<Words> also = line.also == null ? List.of() : line.also;
      materials.add(
          new Material(
              yaml.text(line.material, "material"),
              also.stream().map(Words::text).toList(),
              expansion(yaml, line),
              yaml.text(line.source, "source")));
    }
    return new Expansions(materials);
  }

  /**
   * Reads the table that ships with the tool, or the edited one beside the installed program.
   *
   * @throws IOException with file, line and reason when it cannot be understood
   */
  public static Expansions standard() throws IOException {
    return read(StandardFiles.open("guidelines/expansion.yaml"));
  }

  private static Interval expansion(YamlFile yaml, Line line) throws IOException {
    Quantity from = yaml.positive(line.expansion, "expansion", Dimension.EXPANSION);
    if (line.upTo == null) return Interval.of(from);
    return Interval.between(from, yaml.positive(line.upTo, "upTo", Dimension.EXPANSION));
  }

  /** The material of that name or by-name. */
  public Optional<Material> material(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT).replace('-', ' ');
    return materials.stream().filter(material -> material.isCalled(wanted)).findFirst();
  }

  /** All names, for a message. */
  public List<String> names() {
    return materials.stream().map(Material::name).toList();
  }
}
