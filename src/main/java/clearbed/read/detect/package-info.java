/** The format of a file, told by its content. */
package clearbed.read.detect;
