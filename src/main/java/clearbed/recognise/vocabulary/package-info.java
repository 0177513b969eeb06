/** The words of the trade and how a text is held against them. */
package clearbed.recognise.vocabulary;
