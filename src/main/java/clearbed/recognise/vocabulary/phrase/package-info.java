/** Lists of words and expressions, and how a text is held against them. */
package clearbed.recognise.vocabulary.phrase;
