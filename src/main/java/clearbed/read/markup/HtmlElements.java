package clearbed.read.markup;

import java.util.Set;

/** What the elements of HTML say of the words within them. */
final class HtmlElements {
  private static final Set<String> BREAKS =
      Set.of(
          "p",
          "div",
          "li",
          "ul",
          "ol",
          "dl",
          "dt",
          "dd",
          "h1",
          "h2",
          "h3",
          "h4",
          "h5",
          "h6",
          "blockquote",
          "pre",
          "section",
          "article",
          "header",
          "footer",
          "caption",
          "hr",
          "body",
          "address",
          "fieldset",
          "form",
          "main",
          "nav",
          "aside",
          "figure",
          "figcaption");

  private static final Set<String> UNSEEN =
      Set.of("head", "script", "style", "title", "template", "noscript");

  private static final Set<String> STRUCK = Set.of("s", "strike", "del");

  private HtmlElements() {}

  /** True for an element that begins and ends a paragraph or a line. */
  static boolean breaksText(String name) {
    return BREAKS.contains(name);
  }

  /** True for an element whose words are not shown. */
  static boolean isUnseen(String name) {
    return UNSEEN.contains(name);
  }

  static boolean isStruck(String name) {
    return STRUCK.contains(name);
  }
}
