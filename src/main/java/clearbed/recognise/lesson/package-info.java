/** What a document teaches of the ways of its office: its marks, its products, its legends. */
package clearbed.recognise.lesson;
