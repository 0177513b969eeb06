/** The lines of running text in their order: numbers, headings, items, introductions. */
package clearbed.recognise.section.outline;
