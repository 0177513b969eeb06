package clearbed.calc.takeoff;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;

/** Takes the quantities off, step by step. */
final class TakeoffWorkings {
  private static final Unit M = Unit.METRE;

  private final Workings w = new Workings();
  private final WorkedFigure area;
  private final WorkedFigure length;
  private final WorkedFigure width;
  private final WorkedFigure joint;
  private final WorkedFigure depth;
  private final WorkedFigure bed;
  private final WorkedFigure run;
  private final WorkedFigure openJoint;
  private final WorkedFigure bead;
  private final WorkedFigure tileWaste;
  private final WorkedFigure waste;
  private final TakeoffInputs.Yields yields;

  TakeoffWorkings(TakeoffInputs in) {
    area = w.high("area", "Area to be tiled", in.area());
    length = w.low("tile_length", "Tile length", in.tileLength());
    width = w.low("tile_width", "Tile width", in.tileWidth());
    joint = w.high("grout_width", "Grout joint width", in.groutWidth());
    depth = w.high("grout_depth", "Grout joint depth", in.groutDepth());
    bed = w.high("bed", "Thickness of the mortar bed", in.bedThickness());
    run = w.high("joint_length", "Length of movement joints", in.jointLength());
    openJoint = w.high("joint_width", "Width of movement joints", in.jointWidth());
    bead = w.high("joint_depth", "Depth of sealant", in.jointDepth());
    yields = in.yields();
    tileWaste = w.high("tile_waste", "Waste allowance, tile", yields.tileWaste());
    waste = w.high("waste", "Waste allowance, mortar, grout and sealant", yields.otherWaste());
  }

  Takeoff takeoff(CalculationSubject subject) {
    int tiles = tiles();
    WorkedFigure grout = grout();
    WorkedFigure groutMass =
        mass("grout", "Dry grout", grout, yields.groutDensity(), "Dry grout per litre of joint");
    int groutBags = bags("grout", "Bags of grout", groutMass, yields.groutBag());
    WorkedFigure mortar = mortar();
    WorkedFigure mortarMass =
        mass("mortar", "Dry mortar", mortar, yields.mortarDensity(), "Dry mortar per litre of bed");
    int mortarBags = bags("mortar", "Bags of mortar", mortarMass, yields.mortarBag());
    WorkedFigure sealant = sealant();
    WorkedFigure cartridge = w.low("cartridge", "Sealant in a cartridge", yields.cartridge());
    int cartridges = whole("cartridges", "Cartridges of sealant", sealant, cartridge, Unit.LITRE);
    return new Takeoff(
        tiles,
        grout.quantity(),
        groutMass.quantity(),
        groutBags,
        mortar.quantity(),
        mortarMass.quantity(),
        mortarBags,
        sealant.quantity(),
        cartridges,
        w.done(subject, "Quantities"));
  }

  private int tiles() {
    double module = (length.as(M) + joint.as(M)) * (width.as(M) + joint.as(M));
    double count = area.as(Unit.SQUARE_METRE) / module * withWaste(tileWaste);
    int whole = (int) Math.ceil(count - 1e-9);
    w.step(
        "tiles",
        "Pieces of tile, with waste",
        "area ÷ (tile with its joint) × (1 + waste), rounded up",
        "ROUNDUP("
            + area.in(Unit.SQUARE_METRE)
            + "/"
            + module()
            + "*"
            + withWasteText(tileWaste)
            + "-0.000000001,0)",
        Quantity.of(whole, Unit.ONE));
    return whole;
  }

  private String module() {
    String side = "(" + length.in(M) + "+" + joint.in(M) + ")";
    return "(" + side + "*(" + width.in(M) + "+" + joint.in(M) + "))";
  }

  private WorkedFigure grout() {
    double tile = length.as(M) * width.as(M);
    double module = (length.as(M) + joint.as(M)) * (width.as(M) + joint.as(M));
    double cubic = area.as(Unit.SQUARE_METRE) * (1 - tile / module) * depth.as(M);
    String share = "(1-" + length.in(M) + "*" + width.in(M) + "/" + module() + ")";
    return w.step(
        "grout",
        "Grout in the joints",
        "area × share of the joints in it × depth × (1 + waste)",
        area.in(Unit.SQUARE_METRE)
            + "*"
            + share
            + "*"
            + depth.in(M)
            + "*1000*"
            + withWasteText(waste),
        Takeoff.litres(cubic * 1000 * withWaste(waste)));
  }

  private WorkedFigure mortar() {
    double cubic = area.as(Unit.SQUARE_METRE) * bed.as(M);
    return w.step(
        "mortar",
        "Mortar in the bed",
        "area × thickness × (1 + waste)",
        area.in(Unit.SQUARE_METRE) + "*" + bed.in(M) + "*1000*" + withWasteText(waste),
        Takeoff.litres(cubic * 1000 * withWaste(waste)));
  }

  private WorkedFigure sealant() {
    double cubic = run.as(M) * openJoint.as(M) * bead.as(M);
    return w.step(
        "sealant",
        "Sealant in the movement joints",
        "length × width × depth × (1 + waste)",
        run.in(M) + "*" + openJoint.in(M) + "*" + bead.in(M) + "*1000*" + withWasteText(waste),
        Takeoff.litres(cubic * 1000 * withWaste(waste)));
  }

  private WorkedFigure mass(
      String of, String label, WorkedFigure volume, Given density, String densityLabel) {
    WorkedFigure each = w.high(of + "_density", densityLabel + ", kg", density);
    return w.step(
        of + "_mass",
        label,
        "volume × kilograms per litre",
        volume.in(Unit.LITRE) + "*" + each.in(Unit.ONE),
        Quantity.of(volume.as(Unit.LITRE) * each.as(Unit.ONE), Unit.KILOGRAM));
  }

  private int bags(String of, String label, WorkedFigure mass, Given bag) {
    WorkedFigure each = w.low(of + "_bag", "Content of a bag of " + of, bag);
    return whole(of + "_bags", label, mass, each, Unit.KILOGRAM);
  }

  private int whole(String name, String label, WorkedFigure amount, WorkedFigure each, Unit unit) {
    int whole = (int) Math.ceil(Math.max(0, amount.as(unit) / each.as(unit) - 1e-9));
    w.step(
        name,
        label,
        "amount ÷ content of one, rounded up",
        "ROUNDUP(MAX(0," + amount.in(unit) + "/" + each.in(unit) + "-0.000000001),0)",
        Quantity.of(whole, Unit.ONE));
    return whole;
  }

  private static double withWaste(WorkedFigure waste) {
    return 1 + waste.as(Unit.ONE);
  }

  private static String withWasteText(WorkedFigure waste) {
    return "(1+" + waste.in(Unit.ONE) + ")";
  }
}
