//go:build unix

package main

import (
	"os"
	"runtime"
	"syscall"
)

// peakMemory is the most memory, in megabytes, that a process that has ended had at once.
func peakMemory(ended *os.ProcessState) float64 {
	most := float64(ended.SysUsage().(*syscall.Rusage).Maxrss)
	if runtime.GOOS == "darwin" || runtime.GOOS == "ios" {
		return most / 1e6 // in bytes there, in kibibytes elsewhere
	}
	return most * 1024 / 1e6
}
