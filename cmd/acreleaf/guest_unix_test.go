//go:build unix

package main

import (
	"fmt"
	"os"
	"syscall"
	"testing"
)

// TestScriptUnix runs the scripts that need the rights of files as Unix has them.
func TestScriptUnix(t *testing.T) { runScripts(t, "unix") }

// nobody is the user without rights, by the custom of Unix systems.
const nobody = 65534

// asGuest runs the program without the rights of the superuser, to whom no folder is read-only.
func asGuest() {
	if os.Geteuid() == 0 {
		if err := syscall.Setuid(nobody); err != nil {
			fmt.Fprintln(os.Stderr, "the rights cannot be laid down:", err)
			os.Exit(3)
		}
	}
	main()
}
