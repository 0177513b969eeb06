/** Formats that become markup before they become blocks: HTML, RTF, old Word, OpenDocument text. */
package clearbed.read.markup;
