//go:build !unix

package main

// asGuest runs the program: the user of the tests has no more rights than others.
func asGuest() { main() }
