//go:build !linux

package main

// asUnwatched runs the program: only the test for Linux calls it.
func asUnwatched() { main() }
