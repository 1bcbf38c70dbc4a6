//go:build !unix

package cputime

import "time"

var begun = time.Now()

// Used gives the time since the start, where the system does not count processor time by process.
func Used() time.Duration { return time.Since(begun) }
