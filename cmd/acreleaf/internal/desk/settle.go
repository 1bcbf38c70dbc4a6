package desk

import (
	"context"
	"time"
)

// quiet is how long nothing may change before the site is made again: an editor's save is several changes within a
// few milliseconds.
const quiet = 40 * time.Millisecond

// settle calls do once after each run of changes, when no change has come for the time given. It ends with the
// context.
func settle(ctx context.Context, changes <-chan struct{}, wait time.Duration, do func()) {
	for {
		select {
		case <-ctx.Done():
			return
		case <-changes:
		}
		timer := time.NewTimer(wait)
		for settled := false; !settled; {
			select {
			case <-ctx.Done():
				timer.Stop()
				return
			case <-changes:
				timer.Reset(wait)
			case <-timer.C:
				settled = true
			}
		}
		do()
	}
}
