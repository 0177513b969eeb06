package clearbed.check;

import clearbed.recognise.StandardFiles;
import clearbed.recognise.Vocabulary;
import clearbed.resolve.ProjectFact;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Loads a standard rule set and lays rule files over it. */
public final class RuleSets {
  private final RuleReader ruleReader;
  private final FactReader factReader;

  public RuleSets(Vocabulary vocabulary) {
    this.ruleReader = new RuleReader(vocabulary);
    this.factReader = new FactReader(vocabulary);
  }

  /**
   * @param set name of a bundled set, such as {@code north-america}
   * @param layers rule files, the later over the earlier
   * @throws RuleFileException naming file, line and reason
   */
  public RuleSet load(String set, List<Path> layers) throws RuleFileException {
    List<RuleFile> files = new ArrayList<>();
    files.addAll(withBase(bundled(set)));
    for (Path layer : layers) files.add(layer(layer));
    return merge(files);
  }

  /**
   * Validates one file by itself; a layer is tried over its own or the standard set.
   *
   * @throws RuleFileException naming file, line and reason
   */
  public RuleSet validate(Path path, String set) throws RuleFileException {
    RuleFile file = layer(path);
    return merge(file.tree().has("ruleSet") ? withBase(file) : over(set, file));
  }

  private static List<RuleFile> over(String set, RuleFile layer) throws RuleFileException {
    List<RuleFile> files = new ArrayList<>(withBase(bundled(set)));
    files.add(layer);
    return files;
  }

  /** A set may build on another one and say only what differs. */
  private static List<RuleFile> withBase(RuleFile file) throws RuleFileException {
    return file.tree().has("over")
        ? List.of(bundled(file.tree().get("over").asText()), file)
        : List.of(file);
  }

  private static RuleFile bundled(String set) throws RuleFileException {
    if (!set.matches("[a-z0-9-]+"))
      throw new RuleFileException(
          "no rule set named " + set + "; there are north-america and iso-en");
    try {
      StandardFiles.Source source = StandardFiles.open(set + ".yaml");
      return source.edited()
          ? RuleFile.parse(source.name(), source.bytes())
          : RuleFile.shipped(source);
    } catch (IOException e) {
      throw new RuleFileException(
          "no rule set named " + set + "; there are north-america and iso-en");
    }
  }

  private static RuleFile layer(Path path) throws RuleFileException {
    try {
      return RuleFile.parse(path.toString(), Files.readAllBytes(path));
    } catch (NoSuchFileException e) {
      throw new RuleFileException(path + ": no such rule file; check the path");
    } catch (IOException e) {
      throw new RuleFileException(path + ": cannot be read: " + e.getMessage());
    }
  }

  private RuleSet merge(List<RuleFile> files) throws RuleFileException {
    Map<String, ObjectNode> checks = new LinkedHashMap<>();
    Map<String, RuleReader.Place> places = new LinkedHashMap<>();
    List<RuleSet.Suppression> suppressions = new ArrayList<>();
    List<ProjectFact> facts = new ArrayList<>();
    List<ProjectFact> assumptions = new ArrayList<>();
    String guideline = "";
    for (RuleFile file : files) {
      int i = 0;
      for (JsonNode check : file.tree().path("checks")) {
        String id = check.get("id").asText();
        RuleReader.Place place = new RuleReader.Place(file, "/checks/" + i++);
        boolean twice = places.containsKey(id) && places.get(id).file() == file;
        if (twice) throw file.fault(place.pointer(), "check " + id + " stands twice in this file");
        if (checks.containsKey(id)) checks.get(id).setAll((ObjectNode) check);
        else checks.put(id, ((ObjectNode) check).deepCopy());
        places.put(id, place);
      }
      suppressions(file, suppressions);
      facts.addAll(factReader.read(file, "facts"));
      assumptions.addAll(factReader.read(file, "assumptions"));
      if (file.tree().has("guideline")) guideline = file.tree().get("guideline").asText();
    }
    List<Rule> rules = new ArrayList<>();
    for (Map.Entry<String, ObjectNode> e : checks.entrySet())
      rules.add(ruleReader.read(e.getValue(), places.get(e.getKey())));
    known(suppressions, checks, files);
    JsonNode base =
        files.stream()
            .filter(f -> f.tree().has("ruleSet"))
            .reduce((a, b) -> b)
            .orElseThrow()
            .tree();
    List<String> layers =
        files.stream()
            .filter(f -> f.tree().has("layer"))
            .map(f -> f.tree().get("layer").asText() + " (" + f.name() + ")")
            .toList();
    return new RuleSet(
        base.get("ruleSet").asText(),
        base.path("title").asText(""),
        digest(files),
        layers,
        rules,
        suppressions,
        facts,
        assumptions,
        Guidelines.load(guideline));
  }

  private static void known(
      List<RuleSet.Suppression> suppressions, Map<String, ObjectNode> checks, List<RuleFile> files)
      throws RuleFileException {
    for (RuleSet.Suppression s : suppressions) {
      if (!s.check().isEmpty() && !checks.containsKey(s.check())) {
        throw new RuleFileException(
            s.file()
                + ": suppresses the check "
                + s.check()
                + ", which does not exist; see clearbed explain");
      }
    }
  }

  private static void suppressions(RuleFile file, List<RuleSet.Suppression> out) {
    for (JsonNode s : file.tree().path("suppress")) {
      out.add(
          new RuleSet.Suppression(
              s.path("check").asText(""),
              s.path("id").asText(""),
              s.path("tag").asText(""),
              s.get("reason").asText(),
              file.name()));
    }
  }

  private static String digest(List<RuleFile> files) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      for (RuleFile file : files) sha.update(file.text().getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(sha.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
