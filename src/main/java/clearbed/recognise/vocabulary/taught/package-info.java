/** Words that an office teaches: in its layers by hand, and in its documents by their legends. */
package clearbed.recognise.vocabulary.taught;
