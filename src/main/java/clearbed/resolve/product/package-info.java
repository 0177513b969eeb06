/** Products and components that tiles call for, or that speak of other tiles. */
package clearbed.resolve.product;
