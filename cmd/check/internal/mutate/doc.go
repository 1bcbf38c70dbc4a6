// Package mutate changes one thing of a package at a time and runs the package's own tests, to find what they would not
// notice. A change that no test fails for is a survivor: a test is missing, or the change means the same.
package mutate
