/** Comments in Word files and workbooks, at their paragraphs and cells. */
package clearbed.report.annotate.office;
