package book

import (
	"runtime"
	"runtime/debug"
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
