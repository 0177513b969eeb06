package clearbed.strangers;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import clearbed.strangers.Attempt.Wanted;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.zip.Deflater;

/** PDFs whose trees, pages, text or streams are odd or drawn by lot. */
final class HostilePdf {
  private static final int DRAWN = 50;
  private static final String FONT = "<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>";
  private static final String RESOURCES = "/Resources<</Font<</F1 4 0 R>>>>";

  private static final String[] OPERATORS = {
    "BT",
    "ET",
    "q",
    "Q",
    "/F1 12 Tf",
    "/F9 0 Tf",
    "1 0 0 1 72 700 Tm",
    "0 1 -1 0 90 90 Tm",
    "0 0 0 0 0 0 Tm",
    "1e30 0 0 1e30 0 0 cm",
    "(Lay pipe) Tj",
    "[(Gut) -9999999 (ter)] TJ",
    "T*",
    "(drain) '",
    "0 0 (bore) \"",
    "72 0 Td",
    "-1e9 1e9 Td",
    "99999999999 TL",
    "-50 Tz",
    "0 Tz",
    "3 Tr",
    "0 0 612 792 re f",
    "0 0 m 612 792 l S",
    "W n",
    "/X Do",
    "BI /W 9 /H 9 ID xxxx EI",
    "/P <</MCID 0>> BDC",
    "EMC",
    "<< >>",
    "[ [ [",
    "]]",
    "<6c6179",
    "(never",
    "NaN NaN Td",
    "Do"
  };

  private HostilePdf() {}

  static List<Attempt> all() {
    List<Attempt> out = new ArrayList<>();
    files().forEach((name, bytes) -> out.add(attempt("odd PDFs", name, bytes)));
    HostilePdfPages.all()
        .forEach(
            (name, page) ->
                out.add(attempt("odd PDFs", name, pdf(page[0], page[1].getBytes(ISO_8859_1), ""))));
    for (int i = 0; i < DRAWN; i++) {
      Random random = new Random(2900 + i);
      StringBuilder words = new StringBuilder();
      for (int n = random.nextInt(400); n >= 0; n--)
        words.append(OPERATORS[random.nextInt(OPERATORS.length)]).append('\n');
      byte[] content = words.toString().getBytes(ISO_8859_1);
      out.add(
          attempt(
              "PDFs by lot",
              "drawn-%02d".formatted(i),
              pdf("/MediaBox[0 0 612 792]", content, "")));
    }
    return out;
  }

  private static Attempt attempt(String kind, String name, byte[] bytes) {
    return Attempt.document(kind, name + ".pdf", Wanted.ANSWER_ALONE, () -> bytes);
  }

  /** One page; no table of places, which every reader can make anew. */
  private static byte[] pdf(String page, byte[] content, String more) {
    return file(
        "/Kids[3 0 R]/Count 1",
        "3 0 obj<</Type/Page/Parent 2 0 R/Contents 5 0 R" + RESOURCES + page + ">>endobj\n",
        stream("", content),
        more);
  }

  private static byte[] file(String tree, String pages, byte[] stream, String more) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(
        ("%PDF-1.7\n1 0 obj<</Type/Catalog/Pages 2 0 R/AcroForm 8 0 R/Outlines 9 0 R>>endobj\n"
                + "2 0 obj<</Type/Pages"
                + tree
                + ">>endobj\n"
                + pages
                + "4 0 obj"
                + FONT
                + "endobj\n5 0 obj")
            .getBytes(ISO_8859_1));
    out.writeBytes(stream);
    out.writeBytes(
        ("endobj\n" + more + "trailer<</Root 1 0 R/Size 40>>\n%%EOF\n").getBytes(ISO_8859_1));
    return out.toByteArray();
  }

  private static byte[] stream(String dictionary, byte[] content) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(
        ("<<" + dictionary + "/Length " + content.length + ">>stream\n").getBytes(ISO_8859_1));
    out.writeBytes(content);
    out.writeBytes("\nendstream ".getBytes(ISO_8859_1));
    return out.toByteArray();
  }

  private static byte[] shrunk(byte[] bytes, int times) {
    byte[] packed = bytes;
    for (int i = 0; i < times; i++) {
      Deflater deflater = new Deflater(9);
      deflater.setInput(packed);
      deflater.finish();
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] piece = new byte[1 << 16];
      while (!deflater.finished()) out.write(piece, 0, deflater.deflate(piece));
      deflater.end();
      packed = out.toByteArray();
    }
    return packed;
  }

  private static Map<String, byte[]> files() {
    Map<String, byte[]> out = new LinkedHashMap<>();
    byte[] words = "BT /F1 12 Tf 72 700 Td (Lay pipe to falls.) Tj ET".getBytes(ISO_8859_1);
    byte[] plain = stream("", words);
    String page = "3 0 obj<</Type/Page/Parent 2 0 R/Contents 5 0 R" + RESOURCES + ">>endobj\n";
    out.put("page-twice", file("/Kids[3 0 R 3 0 R]/Count 2", page, plain, ""));
    out.put(
        "page-50000-times",
        file("/Kids[" + "3 0 R ".repeat(50_000) + "]/Count 50000", page, plain, ""));
    out.put("count-wrong", file("/Kids[3 0 R]/Count 2000000000", page, plain, ""));
    out.put("count-minus", file("/Kids[3 0 R]/Count -9", page, plain, ""));
    out.put("no-kids", file("/Count 1", page, plain, ""));
    out.put("kid-of-nothing", file("/Kids[77 0 R]/Count 1", page, plain, ""));
    out.put("parent-loop", file("/Kids[3 0 R]/Count 1/Parent 2 0 R", page, plain, ""));
    out.put(
        "loop-of-three",
        file(
            "/Kids[30 0 R]/Count 1",
            "30 0 obj<</Type/Pages/Kids[31 0 R]>>endobj\n31 0 obj<</Type/Pages/Kids[2 0 R 3 0 R]>>"
                + "endobj\n"
                + page,
            plain,
            ""));
    StringBuilder deep = new StringBuilder();
    for (int i = 100; i < 6_000; i++)
      deep.append(i + " 0 obj<</Type/Pages/Kids[" + (i + 1) + " 0 R]/Count 1>>endobj\n");
    deep.append("6000 0 obj<</Type/Page/Parent 2 0 R/Contents 5 0 R" + RESOURCES + ">>endobj\n");
    out.put("tree-6000-deep", file("/Kids[100 0 R]/Count 1", deep.toString(), plain, ""));
    byte[] much = "BT /F1 9 Tf (x) Tj ET\n".repeat(400_000).getBytes(ISO_8859_1);
    out.put(
        "shrunk",
        file("/Kids[3 0 R]/Count 1", page, stream("/Filter/FlateDecode", shrunk(much, 1)), ""));
    out.put(
        "shrunk-thrice",
        file(
            "/Kids[3 0 R]/Count 1",
            page,
            stream("/Filter[/FlateDecode/FlateDecode/FlateDecode]", shrunk(new byte[60 << 20], 3)),
            ""));
    out.put(
        "filters-2000",
        file(
            "/Kids[3 0 R]/Count 1",
            page,
            stream("/Filter[" + "/ASCIIHexDecode".repeat(2_000) + "]", words),
            ""));
    out.put(
        "filter-unknown", file("/Kids[3 0 R]/Count 1", page, stream("/Filter/Zylk", words), ""));
    out.put(
        "predictor",
        file(
            "/Kids[3 0 R]/Count 1",
            page,
            stream(
                "/Filter/FlateDecode/DecodeParms<</Predictor 15/Columns 2000000000/Colors 99>>",
                shrunk(words, 1)),
            ""));
    out.put(
        "length-of-itself",
        file(
            "/Kids[3 0 R]/Count 1",
            page,
            "<</Length 5 0 R>>stream\nBT ET\nendstream ".getBytes(ISO_8859_1),
            ""));
    out.put(
        "length-huge",
        file(
            "/Kids[3 0 R]/Count 1",
            page,
            "<</Length 99999999999>>stream\nx\nendstream ".getBytes(ISO_8859_1),
            ""));
    forms(out, page, plain);
    out.put("form-of-words", xObject("BT /F1 9 Tf (drain) Tj ET", "/X Do ".repeat(20_000)));
    out.put("form-that-draws-itself", xObject("/X Do /X Do", "/X Do"));
    for (String version :
        List.of("%PDF-9.9", "%PDF-", "x".repeat(2_000) + "%PDF-1.4", "%!PS-Adobe\n%PDF-1.4"))
      out.put(
          "version-" + out.size(),
          new String(file("/Kids[3 0 R]/Count 1", page, plain, ""), ISO_8859_1)
              .replace("%PDF-1.7", version)
              .getBytes(ISO_8859_1));
    out.put(
        "table-that-lies",
        new String(file("/Kids[3 0 R]/Count 1", page, plain, ""), ISO_8859_1)
            .replace("trailer", "xref\n0 2000000000\n0000000000 65535 f\ntrailer")
            .replace("%%EOF", "startxref\n-5\n%%EOF")
            .getBytes(ISO_8859_1));
    out.put(
        "trailers-that-loop",
        new String(file("/Kids[3 0 R]/Count 1", page, plain, ""), ISO_8859_1)
            .replace("trailer<<", "xref\n0 0\ntrailer<</Prev 9 ")
            .replace("%%EOF", "startxref\n9\n%%EOF")
            .getBytes(ISO_8859_1));
    return out;
  }

  private static byte[] xObject(String form, String content) {
    String object =
        "6 0 obj<</Type/XObject/Subtype/Form/BBox[0 0 9 9]/Resources<</XObject<</X 6 0 R>>"
            + "/Font<</F1 4 0 R>>>>/Length "
            + form.length()
            + ">>stream\n"
            + form
            + "\nendstream endobj\n";
    return file(
        "/Kids[3 0 R]/Count 1",
        "3 0 obj<</Type/Page/Parent 2 0 R/Contents 5 0 R/Resources<</XObject<</X 6 0 R>>>>>>"
            + "endobj\n",
        stream("", content.getBytes(ISO_8859_1)),
        object);
  }

  private static void forms(Map<String, byte[]> out, String page, byte[] plain) {
    String one = "/Kids[3 0 R]/Count 1";
    out.put(
        "field-loop",
        file(
            one,
            page,
            plain,
            "8 0 obj<</Fields[10 0 R]>>endobj\n10 0 obj<</T(a)/Kids[10 0 R]>>endobj\n"));
    out.put(
        "fields-20000",
        file(
            one,
            page,
            plain,
            "8 0 obj<</Fields["
                + "10 0 R ".repeat(20_000)
                + "]>>endobj\n10 0 obj<</T(a)/FT/Tx/V(drain)>>endobj\n"));
    out.put(
        "field-value-loop",
        file(
            one,
            page,
            plain,
            "8 0 obj<</Fields[10 0 R]>>endobj\n10 0 obj<</T(a)/FT/Tx/V 10 0 R/Parent 10 0 R>>endobj\n"));
    out.put(
        "field-script",
        file(
            one,
            page,
            plain,
            "8 0 obj<</Fields[]/XFA(x)/AA<</O<</S/JavaScript/JS(app.launchURL\\(1\\))>>>>>>endobj\n"));
    out.put(
        "outline-loop",
        file(
            one,
            page,
            plain,
            "9 0 obj<</First 11 0 R/Last 11 0 R>>endobj\n11 0 obj<</Title(a)/Next 11 0 R/First 11 0 R>>endobj\n"));
    String notes = page.replace("/Contents", "/Annots[%s]/Contents");
    out.put(
        "notes-20000",
        file(
            one,
            notes.formatted("12 0 R ".repeat(20_000)),
            plain,
            "12 0 obj<</Type/Annot/Subtype/Text/Rect[0 0 9 9]/Contents(drain)>>endobj\n"));
    out.put(
        "note-answers-itself",
        file(
            one,
            notes.formatted("12 0 R"),
            plain,
            "12 0 obj<</Type/Annot/Subtype/Text/IRT 12 0 R/Popup 12 0 R/Contents(drain)>>endobj\n"));
    out.put(
        "note-without-place",
        file(
            one,
            notes.formatted("12 0 R null 7 (x)"),
            plain,
            "12 0 obj<</Subtype/FreeText/Rect[(a)]/Contents 12 0 R>>endobj\n"));
    out.put(
        "note-file",
        file(
            one,
            notes.formatted("12 0 R"),
            plain,
            "12 0 obj<</Type/Annot/Subtype/FileAttachment/Rect[0 0 9 9]/FS<</F(../../etc/passwd)>>>>endobj\n"));
  }
}
