/** Words, sentences, numbers and figures with units, whatever they are about. */
package clearbed.recognise.text;
