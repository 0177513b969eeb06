/**
 * What there is to read: files, folders, archives, their formats, how far each is trusted, and
 * words for what cannot be read.
 */
package clearbed.read.source;
