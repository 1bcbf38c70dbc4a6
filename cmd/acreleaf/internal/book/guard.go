package book

import (
	"fmt"
	"path"
	"runtime"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// guard calls do, and tells a panic in it as a fault of the file that was being worked on. One page that the program
// cannot work must not end a press without a word about which page it is, nor a desk that shows all the others.
func guard(source *message.Source, do func()) (failed message.List) {
	defer func() {
		if cause := recover(); cause != nil {
			failed = message.List{{ID: "page-failed", Source: source,
				Text: fmt.Sprintf("the program failed on this file: %v (%s)", cause, panicPlace()),
				Note: "this is a mistake in the program, not in the file: report it, with the file; until it is fixed, " +
					"take out what was last added"}}
		}
	}()
	do()
	return nil
}

// guarded does a part of a page's work, if its text could be read. When the program fails on it, nothing more is done
// with the page.
func (d *draft) guarded(do func()) {
	if d.faulty {
		return
	}
	if failed := guard(d.source, do); failed != nil {
		d.failed, d.faulty = failed, true
	}
}

// panicPlace is the function and the line of this program that panicked, without the folders of the machine that
// compiled it. It is called while the panic is recovered.
func panicPlace() string {
	var counters [64]uintptr
	frames := runtime.CallersFrames(counters[:runtime.Callers(3, counters[:])])
	for {
		frame, more := frames.Next()
		if strings.HasPrefix(frame.Function, "acreleaf/") {
			return fmt.Sprintf("%s, line %d", path.Base(frame.Function), frame.Line)
		}
		if !more {
			return "outside its own code"
		}
	}
}
