package clearbed.corpus;

import clearbed.samples.Outline;
import clearbed.samples.Rendering;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * The documents of one invented project, and what a reader must find in them.
 *
 * @param rules bundled rule set to check it with
 * @param glass tags of the glass tile
 * @param other tags scheduled beside it that are not glass tile
 * @param bundle name of the archive that holds the files, or empty
 */
record DraftSet(
    String name,
    String rules,
    Set<String> glass,
    Set<String> other,
    String bundle,
    List<DraftFile> files) {
  DraftSet {
    glass = java.util.Collections.unmodifiableSet(new LinkedHashSet<>(glass));
    other = java.util.Collections.unmodifiableSet(new LinkedHashSet<>(other));
    files = List.copyOf(files);
  }

  boolean heldBack() {
    return !unseen() && HeldBack.of(name);
  }

  boolean unseen() {
    return Corpus.unseen(name);
  }

  DraftSet withFiles(List<DraftFile> others) {
    return new DraftSet(name, rules, glass, other, bundle, others);
  }

  /** The set with every statement passed through the edit; empty text removes the statement. */
  DraftSet edit(UnaryOperator<Statement> edit) {
    return withFiles(files.stream().map(file -> file.edit(glass, edit)).toList());
  }

  /** Every statement of that label, in reading order. */
  List<Statement> statements(String label) {
    List<Statement> found = new ArrayList<>();
    edit(
        statement -> {
          if (statement.label().equals(label)) found.add(statement);
          return statement;
        });
    return found;
  }

  /** The entries that have or need a statement of that label. */
  Set<String> tags(String label) {
    Set<String> tags = new LinkedHashSet<>();
    statements(label).forEach(statement -> tags.addAll(statement.tags()));
    return tags;
  }

  /** The one outline that notes are best added to: a notes sheet, else the last section. */
  List<Outline> outlines() {
    List<Outline> found = new ArrayList<>();
    for (DraftFile file : files) {
      if (file instanceof DraftFile.SectionFile section) found.add(section.outline());
      if (file instanceof DraftFile.NotesFile notes) found.add(notes.outline());
    }
    return found;
  }

  /** The bytes of each file by its path under the folder to check. */
  Map<String, byte[]> render() {
    Map<String, byte[]> rendered = new LinkedHashMap<>();
    for (DraftFile file : files) rendered.put(file.path(), file.render());
    return bundle.isEmpty() ? rendered : Map.of(bundle, Rendering.bundle(rendered));
  }

  void write(Path folder) throws IOException {
    for (Map.Entry<String, byte[]> file : render().entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.write(path, file.getValue());
    }
  }
}
