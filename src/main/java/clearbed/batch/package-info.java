/** Takes the facts of many documents at a time, in their order. */
package clearbed.batch;
