/** Our own YAML: found, read, held to its schema, and refused with file, line and reason. */
package clearbed.base.config;
