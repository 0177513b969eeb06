package clearbed.check;

import clearbed.check.computed.entry.AbsentCheck;
import clearbed.check.computed.entry.CoverageCheck;
import clearbed.check.computed.entry.DeflectionCheck;
import clearbed.check.computed.entry.FillingCheck;
import clearbed.check.computed.entry.FlatnessCheck;
import clearbed.check.computed.entry.FrostUnsaidCheck;
import clearbed.check.computed.entry.SeeThroughMembraneCheck;
import clearbed.check.computed.entry.SlipCheck;
import clearbed.check.computed.entry.SlipClassCheck;
import clearbed.check.computed.entry.SlopeCheck;
import clearbed.check.computed.entry.SubstratePlaceCheck;
import clearbed.check.computed.entry.TileSizeCheck;
import clearbed.check.computed.entry.WaterClassCheck;
import clearbed.check.computed.joint.GroutFillCheck;
import clearbed.check.computed.joint.GroutReachCheck;
import clearbed.check.computed.joint.GroutWidthCheck;
import clearbed.check.computed.joint.MovementClassCheck;
import clearbed.check.computed.joint.MovementSpacingCheck;
import clearbed.check.computed.joint.MovementWidthCheck;
import clearbed.check.computed.joint.SealantDepthCheck;
import clearbed.check.computed.joint.SealantUseCheck;
import clearbed.check.computed.reference.DanglingReferenceCheck;
import clearbed.check.computed.reference.ReferencesCheck;
import clearbed.check.computed.reference.WithdrawnStandardCheck;
import clearbed.check.computed.set.ConflictCheck;
import clearbed.check.computed.set.NoEntryCheck;
import clearbed.check.computed.set.UnitSlipCheck;
import clearbed.check.computed.set.UnresolvedCheck;
import clearbed.check.computed.set.UnscheduledTagsCheck;
import clearbed.check.computed.set.UnspecifiedTagsCheck;
import clearbed.check.computed.set.VagueCheck;
import clearbed.check.judge.Computation;
import clearbed.check.judge.SetComputation;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** The names under which rule files can ask for something computed. */
final class Computations {
  private static final Map<String, Computation> OF_AN_ENTRY =
      Map.ofEntries(
          Map.entry("grout-reach", new GroutReachCheck()),
          Map.entry("tile-size", new TileSizeCheck()),
          Map.entry("coverage", new CoverageCheck()),
          Map.entry("flatness", new FlatnessCheck()),
          Map.entry("deflection", new DeflectionCheck()),
          Map.entry("grout-width", new GroutWidthCheck()),
          Map.entry("movement-spacing", new MovementSpacingCheck()),
          Map.entry("movement-width", new MovementWidthCheck()),
          Map.entry("movement-class", new MovementClassCheck()),
          Map.entry("sealant-depth", new SealantDepthCheck()),
          Map.entry("slip", new SlipCheck()),
          Map.entry("slip-class", new SlipClassCheck()),
          Map.entry("water-class", new WaterClassCheck()),
          Map.entry("grout-fill", new GroutFillCheck()),
          Map.entry("frost-unsaid", new FrostUnsaidCheck()),
          Map.entry("absent", new AbsentCheck()),
          Map.entry("substrate-place", new SubstratePlaceCheck()),
          Map.entry("see-through-membrane", new SeeThroughMembraneCheck()),
          Map.entry("filling", new FillingCheck()),
          Map.entry("slope", new SlopeCheck(0.02)),
          Map.entry("falls", new SlopeCheck(1 / 80.0)),
          Map.entry("sealant-use", new SealantUseCheck()));
  private static final Map<String, SetComputation> OF_THE_SET =
      Map.ofEntries(
          Map.entry("conflict", new ConflictCheck()),
          Map.entry("unresolved", new UnresolvedCheck()),
          Map.entry("unit-slip", new UnitSlipCheck()),
          Map.entry("withdrawn-standard", new WithdrawnStandardCheck()),
          Map.entry("unlisted-standard", new ReferencesCheck(false)),
          Map.entry("unused-standard", new ReferencesCheck(true)),
          Map.entry("unscheduled-tag", new UnscheduledTagsCheck()),
          Map.entry("unspecified-tag", new UnspecifiedTagsCheck()),
          Map.entry("dangling-reference", new DanglingReferenceCheck()),
          Map.entry("vague", new VagueCheck()),
          Map.entry("no-entry", new NoEntryCheck()));

  private Computations() {}

  static Set<String> names() {
    Set<String> names = new TreeSet<>(OF_AN_ENTRY.keySet());
    names.addAll(OF_THE_SET.keySet());
    names.add("unread");
    return names;
  }

  /** The computation of one entry under that name, or null. */
  static Computation ofAnEntry(String name) {
    return OF_AN_ENTRY.get(name);
  }

  /** The computation over the whole set under that name, or null. */
  static SetComputation ofTheSet(String name) {
    return OF_THE_SET.get(name);
  }
}
