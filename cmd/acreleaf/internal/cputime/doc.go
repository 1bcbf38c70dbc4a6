// Package cputime measures the processor time that this process has used, for tests and benchmarks that compare two
// costs. Unlike the clock it does not run while other programs use the machine.
//
// It owns that one call for each system, and the comparison of some work with work of twice the size. It must not be
// used in what the program itself does.
package cputime
