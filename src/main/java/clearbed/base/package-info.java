/** What any program needs and none of ours alone: memo, parallel work, text fit to be shown. */
package clearbed.base;
