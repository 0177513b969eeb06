package clearbed.strangers;

import static java.nio.charset.StandardCharsets.UTF_8;

import clearbed.strangers.Attempt.Wanted;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Letters of questions that come back damaged, or with answers that mean harm. */
final class HostileLetters {
  private static final int DAMAGED_LETTERS = 40;

  private HostileLetters() {}

  /**
   * @param log a findings workbook as we write it
   * @param letters the letters of its questions, by extension
   */
  static List<Attempt> all(byte[] log, Map<String, byte[]> letters) throws IOException {
    List<Attempt> out = new ArrayList<>();
    byte[] changed = DamagedDocuments.changed(letters.get("docx"), "Grout", "Graut");
    out.add(reply("damaged letters", Wanted.NAMED, "changed.docx", log, changed));
    letters.forEach((extension, letter) -> addReplies(out, log, extension, letter));
    addAnswers(out, log, new String(letters.get("md"), UTF_8));
    return out;
  }

  private static void addReplies(List<Attempt> out, byte[] log, String extension, byte[] letter) {
    Random random = new Random(extension.hashCode());
    for (int i = 0; i < DAMAGED_LETTERS; i++) {
      byte[] copy =
          i % 3 == 0 ? Arrays.copyOf(letter, letter.length * i / DAMAGED_LETTERS) : letter.clone();
      for (int n = 1 << i % 9; n > 0 && copy.length > 0; n--)
        copy[random.nextInt(copy.length)] = (byte) random.nextInt(256);
      out.add(reply("damaged letters", "damaged-" + i + "." + extension, log, copy));
    }
  }

  private static void addAnswers(List<Attempt> out, byte[] log, String letter) {
    List<String> words = new ArrayList<>(HostileDocuments.SPEAKING);
    words.addAll(List.of(HostileUses.SCRIPTS).subList(0, 8));
    for (int i = 0; i < words.size(); i++) {
      String answered = letter.replace("Answer:", "Answer: " + words.get(i));
      out.add(
          reply(
              "answers that outputs might obey",
              "answer-" + i + ".md",
              log,
              answered.getBytes(UTF_8)));
    }
    List<String> numbered =
        List.of(
            "1. yes\n".repeat(100_000),
            "999999. yes\n",
            "1. " + "yes ".repeat(500_000) + "\n",
            "1) a\n1) b\n1) c\n",
            "Question 1\n\nAnswer:\n".repeat(20_000),
            "## Question 99999999999\n\nAnswer: yes\n",
            "# ".repeat(100_000) + "Question 1\nAnswer: x",
            ">".repeat(100_000) + " 1. yes",
            "1. yes\u0000\u001b[2J\u202e\n",
            "");
    for (int i = 0; i < numbered.size(); i++)
      for (String extension : List.of("txt", "md"))
        out.add(
            reply(
                "odd replies",
                "reply-" + i + "." + extension,
                log,
                numbered.get(i).getBytes(UTF_8)));
  }

  private static Attempt reply(String kind, String name, byte[] log, byte[] letter) {
    return reply(kind, Wanted.ANSWER, name, log, letter);
  }

  private static Attempt reply(String kind, Wanted wanted, String name, byte[] log, byte[] letter) {
    return new Attempt(
        kind,
        name,
        wanted,
        (good, folder) -> {
          Path book = Files.write(folder.resolve("log.xlsx"), log);
          Path back = Files.write(folder.resolve("back." + name.replaceAll(".*\\.", "")), letter);
          return List.of(
              "questions",
              book.toString(),
              "--replies",
              back.toString(),
              "-o",
              folder.resolve("findings.xlsx").toString());
        });
  }
}
