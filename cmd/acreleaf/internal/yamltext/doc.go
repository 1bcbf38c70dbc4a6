// Package yamltext reads the YAML that authors write, and knows where each key and value is in the file.
//
// It owns the one reader of YAML with places, and its messages about text that is no YAML. It must not know which keys
// a file has, or what a value means.
package yamltext
