//go:build !unix

package main

import "time"

var begun = time.Now()

// processorTime is the time since the start where the system does not count by process.
func processorTime() time.Duration { return time.Since(begun) }
