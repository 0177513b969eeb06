package clearbed.recognise.vocabulary;

import java.util.Set;

/** Parts of the work, of families.yaml, that are told apart from the tile itself. */
public final class WorkFamilies {
  /** What is bought as a product of its own, by a standard, a mark or a letter. */
  public static final Set<String> MATERIALS = Set.of("mortar", "grout", "sealant", "membrane");

  /** The same, and the joints that are filled with them. */
  public static final Set<String> PARTS =
      Set.of("mortar", "grout", "sealant", "movement", "membrane");

  private WorkFamilies() {}
}
