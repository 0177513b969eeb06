package clearbed.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import clearbed.samples.Outline;
import clearbed.samples.Rendering;
import clearbed.samples.Schedule;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.Proxy;
import java.net.ProxySelector;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketAddress;
import java.net.URI;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionURI;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Documents that refer to other places: nothing is fetched, on the net or on this machine. */
class NothingFetchedTest {
  private static final String SECRET = "GT-777: glass mosaic tile, 1 x 1 in";

  private static final String SECTION =
      """
      @project Quarry Lane
      @number 09 30 00
      @title Tiling
      @date 2026-01-01
      @scheme csi
      # PRODUCTS
      ## TILE
      - GT-1: Glass tile, 4 x 4 in, set in ANSI A118.15 mortar.
      """;

  private static final String SCHEDULE =
      """
      @title
      Tile schedule
      @columns
      tag | | Tag | 10
      material | | Material | 24
      @rows
      GT-1 | Glass tile
      """;

  @TempDir Path folder;
  private Path documents;
  private ServerSocket server;
  private ProxySelector before;

  /** Where somebody called, or was about to. */
  private final Set<String> calls = new ConcurrentSkipListSet<>();

  @BeforeEach
  void listen() throws IOException {
    documents = Files.createDirectory(folder.resolve("documents"));
    Files.writeString(folder.resolve("secret.txt"), SECRET);
    server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    Thread listener = new Thread(this::accept);
    listener.setDaemon(true);
    listener.start();
    before = ProxySelector.getDefault();
    ProxySelector.setDefault(new Noting());
  }

  @AfterEach
  void hangUp() throws IOException {
    ProxySelector.setDefault(before);
    server.close();
  }

  private void accept() {
    while (true) {
      try (Socket socket = server.accept()) {
        calls.add("a connection from " + socket.getPort());
      } catch (IOException e) {
        return;
      }
    }
  }

  private final class Noting extends ProxySelector {
    @Override
    public List<Proxy> select(URI uri) {
      calls.add(uri.toString());
      return List.of(Proxy.NO_PROXY);
    }

    @Override
    public void connectFailed(URI uri, SocketAddress address, IOException e) {
      calls.add(uri.toString());
    }
  }

  @Test
  void nothingIsFetchedOverTheNet() throws Exception {
    write("http://127.0.0.1:" + server.getLocalPort() + "/");

    Run run = check();

    assertThat(calls).isEmpty();
    assertThat(run.printed).doesNotContain("Exception");
    // The watch is awake: what a parser would do is noticed.
    URL url = new URL("http://127.0.0.1:" + server.getLocalPort() + "/awake");
    try (InputStream in = url.openStream()) {
      in.read();
    } catch (IOException e) {
      // Nobody answers; the call counts.
    }
    assertThat(calls).anyMatch(call -> call.endsWith("/awake"));
  }

  @Test
  void nothingIsReadBesideTheGivenPaths() throws Exception {
    write(folder.toUri().toString().replaceFirst("^file:/(?!/)", "file:///"));

    Run run = check();

    assertThat(run.json).contains("GT-1").doesNotContain("GT-777");
    Files.copy(folder.resolve("secret.txt"), documents.resolve("given.txt"));
    assertThat(check().json).as("the words would be found if they were read").contains("GT-777");
  }

  /** Documents of every format whose every way of pointing elsewhere points to the place. */
  private void write(String place) throws IOException {
    String secret = place + "secret.txt";
    Map<String, byte[]> files = new LinkedHashMap<>();
    Outline section = Outline.parse(SECTION);
    for (String format : new String[] {"docx", "odt"}) {
      byte[] sound = Rendering.outline(section, "section." + format);
      String part = format.equals("docx") ? "word/document.xml" : "content.xml";
      addDeclarations(files, format, sound, part, secret);
      files.put(
          "links." + format, format.equals("docx") ? word(sound, secret) : odt(sound, secret));
    }
    Schedule schedule = Schedule.parse(SCHEDULE);
    for (String format : new String[] {"xlsx", "ods"}) {
      byte[] sound = Rendering.schedule(schedule, "Tile", "schedule." + format);
      String part = format.equals("xlsx") ? "xl/worksheets/sheet1.xml" : "content.xml";
      addDeclarations(files, format, sound, part, secret);
      files.put(
          "links." + format, format.equals("xlsx") ? excel(sound, secret) : odt(sound, secret));
    }
    files.put("page.html", html(secret).getBytes(UTF_8));
    files.put("strict.xhtml", (dtd("html", secret) + html(secret)).getBytes(UTF_8));
    files.put("rich.rtf", rtf(secret).getBytes(UTF_8));
    files.put("note.md", ("GT-1: glass tile ![x](" + secret + ")\n").getBytes(UTF_8));
    files.put(
        "list.csv",
        ("Tag,Material\nGT-1,\"=WEBSERVICE(\"\"" + secret + "\"\")\"\n").getBytes(UTF_8));
    for (String kind : new String[] {"spreadsheet", "word"}) {
      files.put(kind + "-2003.xml", old(kind, secret).getBytes(UTF_8));
    }
    files.put("act.pdf", pdf(secret));
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Files.write(documents.resolve(file.getKey()), file.getValue());
    }
  }

  private static String dtd(String root, String address) {
    return "<?xml version=\"1.0\"?><!DOCTYPE " + root + " SYSTEM \"" + address + "\">";
  }

  private static void addDeclarations(
      Map<String, byte[]> files, String format, byte[] sound, String part, String address)
      throws IOException {
    files.put("dtd." + format, changed(sound, part, x -> dtd("d", address) + bare(x)));
    String parameter = "<!DOCTYPE d [<!ENTITY % p SYSTEM \"" + address + "\"> %p;]>";
    files.put("parameter." + format, changed(sound, part, x -> parameter + bare(x)));
    String entity = "<!DOCTYPE d [<!ENTITY e SYSTEM \"" + address + "\">]>";
    files.put(
        "entity." + format,
        changed(sound, part, x -> entity + bare(x).replaceFirst("Glass tile", "&e; Glass tile")));
    files.put(
        "include." + format,
        changed(
            sound,
            part,
            x ->
                bare(x)
                    .replaceFirst(
                        "Glass tile",
                        "<xi:include xmlns:xi=\"http://www.w3.org/2001/XInclude\" parse=\"text\""
                            + " href=\""
                            + address
                            + "\"/>Glass tile")));
    files.put(
        "schema." + format,
        changed(
            sound,
            part,
            x ->
                bare(x)
                    .replaceFirst(
                        "^<([\\w:]+)",
                        "<$1 xmlns:xsi=\"http://www.w3.org/2001/XMLSchema-instance\""
                            + " xsi:noNamespaceSchemaLocation=\""
                            + address
                            + "\"")));
  }

  private static String bare(String xml) {
    return xml.replaceFirst("^\uFEFF?<\\?xml[^>]*\\?>\\s*", "");
  }

  /** A template, a picture, a sub-document and an inserted file that lie elsewhere. */
  private static byte[] word(byte[] sound, String address) throws IOException {
    String type = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
    StringBuilder links = new StringBuilder();
    for (String kind :
        List.of("attachedTemplate", "image", "subDocument", "aFChunk", "styles", "header")) {
      links.append(
          "<Relationship Id=\"far%s\" Type=\"%s%s\" Target=\"%s\" TargetMode=\"External\"/>"
              .formatted(kind, type, kind, address));
    }
    byte[] linked =
        changed(
            sound,
            "word/_rels/document.xml.rels",
            x -> x.replaceFirst("</Relationships>", links + "</Relationships>"));
    return changed(
        linked,
        "word/document.xml",
        x ->
            x.replaceFirst(
                "<w:body>",
                "<w:body><w:altChunk xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/"
                    + "2006/relationships\" r:id=\"faraFChunk\"/>"));
  }

  private static byte[] excel(byte[] sound, String address) throws IOException {
    String type = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
    StringBuilder links = new StringBuilder();
    for (String kind : List.of("externalLink", "connections", "sharedStrings", "worksheet")) {
      links.append(
          "<Relationship Id=\"far%s\" Type=\"%s%s\" Target=\"%s\" TargetMode=\"External\"/>"
              .formatted(kind, type, kind, address));
    }
    return changed(
        sound,
        "xl/_rels/workbook.xml.rels",
        x -> x.replaceFirst("</Relationships>", links + "</Relationships>"));
  }

  private static byte[] odt(byte[] sound, String address) throws IOException {
    String picture =
        "<draw:frame xmlns:draw=\"urn:oasis:names:tc:opendocument:xmlns:drawing:1.0\">"
            + "<draw:image xmlns:xlink=\"http://www.w3.org/1999/xlink\" xlink:actuate=\"onLoad\""
            + " xlink:href=\""
            + address
            + "\"/></draw:frame>";
    return changed(sound, "content.xml", x -> x.replaceFirst("(<text:p[^>/]*>)", "$1" + picture));
  }

  private static String html(String address) {
    return """
        <html><head><base href="%1$s"><link rel="stylesheet" href="%1$s">
        <meta http-equiv="refresh" content="0;url=%1$s"><script src="%1$s"></script></head>
        <body background="%1$s"><p>GT-1: glass tile</p><img src="%1$s"><iframe src="%1$s"></iframe>
        <object data="%1$s"></object><embed src="%1$s"><frame src="%1$s"><video src="%1$s"></video>
        <svg><image href="%1$s"/><use href="%1$s"/></svg></body></html>
        """
        .formatted(address);
  }

  private static String rtf(String address) {
    return "{\\rtf1 GT-1: glass tile\\par {\\field{\\*\\fldinst INCLUDETEXT \""
        + address
        + "\"}{\\fldrslt }}{\\field{\\*\\fldinst INCLUDEPICTURE \""
        + address
        + "\"}{\\fldrslt }}{\\*\\template "
        + address
        + "}}";
  }

  private static String old(String kind, String address) {
    String body =
        kind.equals("word")
            ? "<w:wordDocument xmlns:w=\"http://schemas.microsoft.com/office/word/2003/wordml\">"
                + "<w:body><w:p><w:r><w:t>GT-1: glass tile</w:t></w:r></w:p></w:body>"
                + "</w:wordDocument>"
            : "<Workbook xmlns=\"urn:schemas-microsoft-com:office:spreadsheet\"/>";
    return "<?xml version=\"1.0\"?><?xml-stylesheet type=\"text/xsl\" href=\""
        + address
        + "\"?><!DOCTYPE x SYSTEM \""
        + address
        + "\">"
        + body;
  }

  private static byte[] pdf(String address) throws IOException {
    try (PDDocument pdf = new PDDocument()) {
      pdf.addPage(new PDPage());
      PDActionURI action = new PDActionURI();
      action.setURI(address);
      pdf.getDocumentCatalog().setOpenAction(action);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      pdf.save(out);
      return out.toByteArray();
    }
  }

  private interface Change {
    String of(String xml);
  }

  private static byte[] changed(byte[] zip, String part, Change change) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    boolean found = false;
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip));
        ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        out.putNextEntry(new ZipEntry(e.getName()));
        byte[] content = in.readAllBytes();
        if (e.getName().equals(part)) {
          String before = new String(content, UTF_8);
          String after = change.of(before);
          found = !after.equals(before);
          content = after.getBytes(UTF_8);
        }
        out.write(content);
      }
    }
    assertThat(found).as("a change of " + part).isTrue();
    return bytes.toByteArray();
  }

  private record Run(String printed, String json) {}

  private Run check() throws IOException {
    PrintStream oldOut = System.out;
    PrintStream oldErr = System.err;
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintStream both = new PrintStream(bytes, true, UTF_8);
    System.setOut(both);
    System.setErr(both);
    Path copies = folder.resolve("copies");
    try {
      Main.run(
          "check",
          documents.toString(),
          "--output=" + folder.resolve("findings.xlsx"),
          "--json=" + folder.resolve("findings.json"),
          "--annotate=" + copies);
    } finally {
      System.setOut(oldOut);
      System.setErr(oldErr);
    }
    return new Run(bytes.toString(UTF_8), Files.readString(folder.resolve("findings.json")));
  }
}
