/** The parts and trees that office formats share. */
package clearbed.read.xml;
