package clearbed.calc.guideline;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigFile;
import clearbed.base.config.ConfigNode;
import clearbed.base.config.StandardFiles;
import clearbed.calc.figure.FigureFile;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
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
public record Expansions(List<MaterialExpansion> materials) {

  public Expansions {
    materials = List.copyOf(materials);
  }

  /**
   * @param expansion coefficient, or the two ends that the source gives
   * @param source where it is published, with its mark
   */
  public record MaterialExpansion(
      String name, List<String> also, Interval expansion, String source) {
    public MaterialExpansion {
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

  /**
   * Reads the table.
   *
   * @throws IOException with file, line and reason when it cannot be understood
   */
  public static Expansions read(String name, byte[] bytes) throws IOException {
    return read(new StandardFiles.FileSource(name, bytes, true));
  }

  private static Expansions read(StandardFiles.FileSource source) throws IOException {
    List<MaterialExpansion> materials = new ArrayList<>();
    for (ConfigNode line : ConfigFile.read(source, "expansion").root().get("materials").items()) {
      materials.add(
          new MaterialExpansion(
              line.get("material").text().strip(),
              line.get("also").texts(),
              expansion(line),
              line.get("source").text().strip()));
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

  private static Interval expansion(ConfigNode line) throws ConfigException {
    Quantity from = FigureFile.positive(line.get("expansion"), Dimension.EXPANSION);
    if (!line.has("upTo")) return Interval.of(from);
    return Interval.between(from, FigureFile.positive(line.get("upTo"), Dimension.EXPANSION));
  }

  /** The material of that name or by-name. */
  public Optional<MaterialExpansion> material(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT).replace('-', ' ');
    return materials.stream().filter(material -> material.isCalled(wanted)).findFirst();
  }

  /** All names, for a message. */
  public List<String> names() {
    return materials.stream().map(MaterialExpansion::name).toList();
  }
}
