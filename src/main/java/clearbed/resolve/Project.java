package clearbed.resolve;

import clearbed.model.value.Entry;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.RoomUse;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Citation;
import clearbed.recognise.statement.code.Tags;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** The whole set, joined. */
public final class Project {
  private final List<Entry> entries;
  private final List<Entry> glass;
  private final List<Facts> facts;
  private final Set<String> tags;
  private final Set<String> components;
  private final NationalPractice practice;

  /**
   * @param entries glass and other, by first appearance
   * @param facts by document, in reading order; what their rows state is in the entries
   * @param tags every tag that a schedule or a product article gives, in the one way of writing
   * @param components marks that stand for a mortar or a grout, likewise
   */
  public Project(List<Entry> entries, List<Facts> facts, Set<String> tags, Set<String> components) {
    this.entries = List.copyOf(entries);
    this.glass = this.entries.stream().filter(Entry::glass).toList();
    this.facts = List.copyOf(facts);
    this.tags = tags;
    this.components = Set.copyOf(components);
    this.practice = NationalPractice.of(citations());
  }

  /** Whose rules of the trade the documents follow. */
  public NationalPractice practice() {
    return practice;
  }

  /** Marks that stand for a mortar, a grout or a membrane, in the one way of writing. */
  public Set<String> components() {
    return components;
  }

  public List<Entry> entries() {
    return entries;
  }

  /** The entries that are glass tile; every rule asks for them, and for each of them again. */
  public List<Entry> glass() {
    return glass;
  }

  public List<Facts> facts() {
    return facts;
  }

  public Set<String> tags() {
    return tags;
  }

  /** The tags of glass entries, in the one way of writing. */
  public Set<String> glassKeys() {
    return glass.stream().map(e -> Tags.key(e.tag())).collect(Collectors.toSet());
  }

  public List<Section> sections() {
    return facts.stream().flatMap(f -> f.sections().stream()).toList();
  }

  public List<Citation> citations() {
    return facts.stream().flatMap(f -> f.citations().stream()).toList();
  }

  public List<RoomUse> rooms() {
    List<RoomUse> out = new ArrayList<>();
    facts.forEach(f -> out.addAll(f.rooms()));
    return out;
  }

  /** The section that governs tile work, or null. */
  public Section tileSection() {
    return sections().stream().filter(Section::article).findFirst().orElse(null);
  }
}
