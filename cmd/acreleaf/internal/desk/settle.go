package desk

import (
	"context"
	"time"
)

// An editor's save is several changes within a few milliseconds, and a program that moves many files makes one change
// after the other.
const (
	quiet   = 20 * time.Millisecond // nothing may change for so long before the site is made again
	longest = time.Second           // but a run of changes that does not end is looked at all the same
)

// settle calls do once after each run of changes, when no change has come for the time of quiet. It ends with the
// context.
func settle(ctx context.Context, changes <-chan struct{}, do func()) {
	for {
		select {
		case <-ctx.Done():
			return
		case <-changes:
		}
		if !still(ctx, changes) {
			return
		}
		do()
	}
}

// still waits until a run of changes is over. It is false when the context has ended.
func still(ctx context.Context, changes <-chan struct{}) bool {
	end := time.NewTimer(longest)
	defer end.Stop()
	timer := time.NewTimer(quiet)
	defer timer.Stop()
	for {
		select {
		case <-ctx.Done():
			return false
		case <-changes:
			timer.Reset(quiet)
		case <-timer.C:
			return true
		case <-end.C:
			return true
		}
	}
}
