/**
 * What every check needs to judge: values held against what is accepted, findings worded, places
 * seen.
 */
package clearbed.check.judge;
