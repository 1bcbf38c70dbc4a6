package book

import (
	"fmt"
	"path"
	"runtime"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// A failure is a panic that was recovered: a mistake in the program.
type failure struct {
	cause any
	place string // the function and the line
}

// guard calls do, and gives the failure of it; nil for none. One page that the program cannot work must not end a press
// without a word about which page it is, nor a desk that shows all the others.
func guard(do func()) (failed *failure) {
	defer func() {
		switch cause := recover().(type) {
		case nil:
		case *failure: // of a goroutine that do waited for (each)
			failed = cause
		default:
			failed = &failure{cause, panicPlace()}
		}
	}()
	do()
	return nil
}

// on tells a failure as a fault of the file that was being worked on.
func (f *failure) on(source *message.Source) message.List {
	return message.List{{ID: "page-failed", Source: source,
		Text: fmt.Sprintf("the program failed on this file: %v (%s)", f.cause, f.place),
		Note: "this is a mistake in the program, not in the file: report it, with the file; until it is fixed, " +
			"take out what was last added"}}
}

// between tells a failure as a fault of no page alone.
func (f *failure) between(o Options) message.List {
	return message.List{{ID: "pages-failed",
		Text: fmt.Sprintf("the program failed between the pages: %v (%s)", f.cause, f.place),
		Note: "this is a mistake in the program, not in the pages: report it, with this message and the folder " + o.Name +
			"; until it is fixed, take out what was last added"}}
}

// between does work that is of no page alone. When the program fails on it, that is a fault of the press, and what the
// press knows may be half of what there is.
func (p *press) between(do func()) {
	if failed := guard(do); failed != nil {
		p.say(failed.between(p.options))
		p.half = true
	}
}

// guarded does a part of a page's work, if its text could be read. When the program fails on it, nothing more is done
// with the page.
func (d *draft) guarded(do func()) {
	if d.faulty {
		return
	}
	if failed := guard(do); failed != nil {
		d.failed, d.faulty = failed.on(d.source), true
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
