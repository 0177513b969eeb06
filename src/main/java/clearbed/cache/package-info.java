/** Keeps what was recognised of each file, so that an unchanged file is not read again. */
package clearbed.cache;
