//go:build !linux

package main

// asLimited runs the program: only the test for Linux calls it.
func asLimited() { main() }
