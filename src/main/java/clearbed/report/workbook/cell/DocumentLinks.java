package clearbed.report.workbook.cell;

import clearbed.model.document.Origin;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;

/** Turns places in the documents into links that work from where the workbook lies. */
public final class DocumentLinks {
  public static final String OPEN = "open";

  private final UnaryOperator<String> pathFromWorkbook;

  /** By document: thousands of links lead to a few, and for each the disk is asked. */
  private final Map<String, Optional<String>> addresses = new ConcurrentHashMap<>();

  /**
   * @param pathFromWorkbook from a document's path to its path relative to the workbook's folder,
   *     or null when it cannot be linked to
   */
  public DocumentLinks(UnaryOperator<String> pathFromWorkbook) {
    this.pathFromWorkbook = pathFromWorkbook;
  }

  /** One short word that leads there: some programs do not wrap the text of a link. */
  public Datum.Link link(Origin origin) {
    boolean archived = origin.document().contains("!/");
    boolean cell = origin.sheet() != null && origin.cell() != null && !archived;
    String location = cell ? quoted(origin.sheet()) + "!" + origin.cell() : null;
    return open(address(origin.document()), location);
  }

  public Datum.Link link(String document) {
    return open(address(document), null);
  }

  private static Datum.Link open(String address, String location) {
    return new Datum.Link(address == null ? "" : OPEN, address, location);
  }

  /**
   * The relative URI of a document, of its archive when it lies in one; null when there is none.
   */
  private String address(String document) {
    return addresses.computeIfAbsent(document, d -> Optional.ofNullable(found(d))).orElse(null);
  }

  private String found(String document) {
    if (document.isEmpty()) return null;
    int archive = document.indexOf("!/");
    String file = archive < 0 ? document : document.substring(0, archive);
    String path = pathFromWorkbook.apply(file);
    return path == null || path.isEmpty() ? null : uri(path);
  }

  /** A relative path as a relative URI reference (RFC 3986). */
  public static String uri(String path) {
    // A colon in the first segment would read as a scheme (RFC 3986, 4.2).
    String safe = path.split("/", 2)[0].contains(":") ? "./" + path : path;
    try {
      return new URI(null, null, safe, null).toASCIIString();
    } catch (URISyntaxException odd) {
      return URLEncoder.encode(path, StandardCharsets.UTF_8).replace("+", "%20");
    }
  }

  private static String quoted(String sheet) {
    return "'" + sheet.replace("'", "''") + "'";
  }
}
