/**
 * Plain text and the formats that become markup: Markdown, HTML, RTF, old Word, OpenDocument text.
 */
package clearbed.read.text;
