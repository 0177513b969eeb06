package clearbed.check.computed.set;

import clearbed.calc.figure.Given;
import clearbed.calc.takeoff.ProductTotal;
import clearbed.calc.takeoff.ProductTotal.TileAmount;
import clearbed.calc.takeoff.Takeoff;
import clearbed.calc.takeoff.TakeoffInputs;
import clearbed.check.rules.RuleSet;
import clearbed.model.report.Calculation;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What is bought of each mortar, grout and sealant for all tiles together. Products are told apart
 * by class or standard, kind and colour, as far as documents state them.
 */
public final class BidTotals {
  private static final Map<String, List<String>> PRODUCTS = products();

  private final Project project;
  private final RuleSet rules;

  private static Map<String, List<String>> products() {
    Map<String, List<String>> out = new LinkedHashMap<>();
    out.put(
        "mortar",
        List.of("mortar.isoClass", "mortar.standard", "mortar.deformability", "mortar.colour"));
    out.put("grout", List.of("grout.isoClass", "grout.standard", "grout.type", "grout.colour"));
    out.put("sealant", List.of("sealant.standard", "sealant.class"));
    return out;
  }

  public BidTotals(Project project, RuleSet rules) {
    this.project = project;
    this.rules = rules;
  }

  /** One for each product, by first appearance; none where only one tile is taken off. */
  public List<Calculation> calculations() {
    Map<String, List<TileAmount>> mortar = new LinkedHashMap<>();
    Map<String, List<TileAmount>> grout = new LinkedHashMap<>();
    Map<String, List<TileAmount>> sealant = new LinkedHashMap<>();
    int tiles = 0;
    for (Entry entry : project.glass()) {
      Optional<Takeoff> takeoff = new BidQuantities(entry, project, rules).takeoff();
      if (takeoff.isEmpty()) continue;
      tiles++;
      add(mortar, "mortar", entry, takeoff.get().mortarMass());
      add(grout, "grout", entry, takeoff.get().groutMass());
      if (takeoff.get().sealant().number() > 0)
        add(sealant, "sealant", entry, takeoff.get().sealant());
    }
    if (tiles < 2) return List.of();
    TakeoffInputs.Yields yields = rules.yields();
    List<Calculation> out = new ArrayList<>();
    mortar.forEach((name, parts) -> out.add(total(name, parts, yields.mortarBag(), "Bags")));
    grout.forEach((name, parts) -> out.add(total(name, parts, yields.groutBag(), "Bags")));
    sealant.forEach((name, parts) -> out.add(total(name, parts, yields.cartridge(), "Cartridges")));
    return out;
  }

  private Calculation total(String product, List<TileAmount> parts, Given each, String packaging) {
    return ProductTotal.of(
            rules.subject("quantities", "all tiles: " + product), product, parts, each, packaging)
        .calculation();
  }

  private static void add(
      Map<String, List<TileAmount>> totals, String product, Entry entry, Quantity amount) {
    totals
        .computeIfAbsent(name(product, entry), name -> new ArrayList<>())
        .add(new TileAmount(entry.tag(), amount));
  }

  /** "mortar, ANSI A118.15, white"; what nobody states is left out. */
  private static String name(String product, Entry entry) {
    String stated =
        PRODUCTS.get(product).stream()
            .flatMap(attribute -> words(entry, attribute))
            .distinct()
            .collect(Collectors.joining(", "));
    return stated.isEmpty() ? product + ", not named" : product + ", " + stated;
  }

  private static Stream<String> words(Entry entry, String attribute) {
    return entry.governing(attribute).stream()
        .map(v -> v.content())
        .filter(c -> c instanceof Content.Term || c instanceof Content.Standard)
        .map(Content::text)
        .distinct()
        .sorted();
  }
}
