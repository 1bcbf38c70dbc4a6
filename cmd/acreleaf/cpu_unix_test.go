//go:build unix

package main

import (
	"syscall"
	"time"
)

// processorTime is what this process has used of the processors, in the system's calls too. Unlike the clock it does
// not run while others use them.
func processorTime() time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		panic(err) // the call has no way to fail
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}
