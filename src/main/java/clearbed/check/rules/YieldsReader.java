package clearbed.check.rules;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigFile;
import clearbed.base.config.ConfigNode;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.takeoff.TakeoffInputs;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.recognise.text.Quantities;
import java.util.List;

/** What the materials and the work of an office yield; of several files the later wins. */
final class YieldsReader {
  private final List<ConfigFile> files;

  private YieldsReader(List<ConfigFile> files) {
    this.files = files;
  }

  /**
   * @param measure decides the bags that are common where no file says any
   * @throws ConfigException naming file, line and reason
   */
  static TakeoffInputs.Yields read(List<ConfigFile> files, Measure measure) throws ConfigException {
    YieldsReader of = new YieldsReader(files);
    TakeoffInputs.Yields common = TakeoffInputs.Yields.common(measure);
    return new TakeoffInputs.Yields(
        of.given("tileWaste", Dimension.RATIO, common.tileWaste()),
        of.given("otherWaste", Dimension.RATIO, common.otherWaste()),
        of.given("groutDensity", Dimension.RATIO, common.groutDensity()),
        of.given("groutBag", Dimension.MASS, common.groutBag()),
        of.given("mortarDensity", Dimension.RATIO, common.mortarDensity()),
        of.given("mortarBag", Dimension.MASS, common.mortarBag()),
        of.given("cartridge", Dimension.VOLUME, common.cartridge()));
  }

  private Given given(String key, Dimension dimension, Given common) throws ConfigException {
    Given given = common;
    for (ConfigFile file : files) {
      ConfigNode yields = file.root().get("yields");
      if (yields.has(key)) given = given(yields.get(key), key, dimension, file.name());
    }
    return given;
  }

  private static Given given(ConfigNode node, String key, Dimension dimension, String file)
      throws ConfigException {
    Content.Amount amount = Quantities.parse(node.text(), dimension).orElse(null);
    boolean waste = key.endsWith("Waste");
    if (amount == null
        || !amount.low().equals(amount.high())
        || !waste && amount.low().number() <= 0)
      throw node.fault(
          "'" + node.text() + "' is no figure for " + key + "; write one such as " + example(key));
    return Given.assumed(amount.low(), "as " + file + " gives it");
  }

  private static String example(String key) {
    return switch (key) {
      case "tileWaste", "otherWaste" -> "12 %";
      case "groutBag", "mortarBag" -> "20 kg";
      case "cartridge" -> "310 ml";
      default -> "'1.6', kilograms for a litre";
    };
  }
}
