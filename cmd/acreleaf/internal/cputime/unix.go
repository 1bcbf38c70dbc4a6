//go:build unix

package cputime

import (
	"syscall"
	"time"
)

// Used gives the processor time of this process since its start, in its own code and in the system's calls.
func Used() time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		panic(err) // the call has no way to fail
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}
