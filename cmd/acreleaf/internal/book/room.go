package book

import (
	"runtime"
	"runtime/debug"
	"strings"
)

// room is memory that is asked for and never touched, so that the system gives none for it. The collector counts it as
// in use. What a making keeps of a page is small, and what it takes to make one is large and soon gone: without the
// room the collector would run every few pages of a small site.
const room = 144 << 20

// newShare is how much may be new before the collector runs, in percent of what is in use with the room. With the usual
// 100 and half the room a small site has as many runs, and a site of 100,000 pages takes a third more memory.
const newShare = 60

// GiveRoom lets the collector run seldom while a book is made from nothing, until the function that it gives is called.
func GiveRoom() (end func()) {
	untouched := make([]byte, room)
	before := debug.SetGCPercent(newShare)
	return func() {
		runtime.KeepAlive(untouched)
		debug.SetGCPercent(before)
	}
}

// pack puts texts that stay with a page into one piece of memory. What stays of 100,000 pages is some million short
// texts, and the collector looks at each piece.
func pack(texts []*string) {
	size := 0
	for _, text := range texts {
		size += len(*text)
	}
	var all strings.Builder
	all.Grow(size)
	for _, text := range texts {
		all.WriteString(*text)
	}
	rest := all.String()
	for _, text := range texts {
		*text, rest = rest[:len(*text)], rest[len(*text):]
	}
}
