package clearbed.cli.joint;

import picocli.CommandLine.Option;

/** The options of {@code clearbed joint} as typed; null where left out. */
final class JointOptions {

  @Option(
      names = "--run",
      paramLabel = "LENGTH",
      description = "Longest unbroken run, for a layout in equal fields.")
  String run;

  @Option(names = "--spacing", paramLabel = "LENGTH", description = "Spacing of the joints.")
  String spacing;

  @Option(
      names = "--range",
      paramLabel = "DIFFERENCE",
      description = "Temperature range of the tile surface, summer high less winter low.")
  String range;

  @Option(
      names = "--class",
      paramLabel = "CLASS",
      description = "Sealant class of ASTM C920 or ISO 11600: 25, 50, 100/50, 25LM.")
  String sealant;

  @Option(
      names = "--exposure",
      paramLabel = "WHERE",
      description =
          "interior, interior-above-ground (a slab above ground), interior-sun-or-moisture, exterior,"
              + " exterior-cold-deck (open to the sky, cold region).")
  String exposure;

  @Option(names = "--floor", description = "The tile is on a floor and is no mosaic.")
  boolean floor;

  @Option(
      names = "--width",
      paramLabel = "LENGTH",
      description = "A joint width to judge, or to find the largest spacing for.")
  String width;

  @Option(
      names = "--material",
      paramLabel = "NAME",
      description = "What the tile is made of; default glass.")
  String material;

  @Option(
      names = "--expansion",
      paramLabel = "COEFFICIENT",
      description = "The maker's expansion instead: 9e-6/K, 5e-6/F.")
  String expansion;

  @Option(
      names = "--substrate",
      paramLabel = "NAME",
      description =
          "Show the movement against this substrate too: concrete, steel, ... or its expansion.")
  String substrate;

  @Option(
      names = "--substrate-range",
      paramLabel = "DIFFERENCE",
      description = "Temperature range of the substrate; default that of the tile.")
  String substrateRange;

  @Option(names = "--tolerance", paramLabel = "LENGTH", description = "Construction tolerance.")
  String tolerance;

  @Option(
      names = "--other",
      paramLabel = "LENGTH",
      description = "Movement other than by temperature, such as moisture or deflection.")
  String other;

  @Option(
      names = "--least",
      paramLabel = "LENGTH",
      description = "Least joint width that the maker of the sealant gives.")
  String least;

  @Option(
      names = "--coldest",
      paramLabel = "TEMPERATURE",
      description = "Coldest tile surface; with --hottest in place of --range.")
  String coldest;

  @Option(names = "--hottest", paramLabel = "TEMPERATURE", description = "Hottest tile surface.")
  String hottest;

  @Option(
      names = "--sealed",
      paramLabel = "TEMPERATURE",
      description =
          "Tile temperature while the joints are sealed, e.g. 40to80F: opening and closing are then"
              + " reckoned apart.")
  String sealed;
}
