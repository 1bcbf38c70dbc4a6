package desk

import (
	"context"
	"testing"
	"testing/synctest"
	"time"
)

// In a bubble of synctest the clock stands still until all wait, so these tests take no time and cannot be slow.

func TestBurstIsOneRun(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		changes, runs := make(chan struct{}), make(chan time.Duration, 10)
		start := time.Now()
		ctx, stop := context.WithCancel(t.Context())
		go settle(ctx, changes, func() { runs <- time.Since(start) })

		for range 20 { // an editor's save: many changes, each within the quiet time of the last
			changes <- struct{}{}
			time.Sleep(quiet - time.Millisecond)
		}
		synctest.Wait()
		if len(runs) != 0 {
			t.Fatalf("ran while changes still came, after %v", <-runs)
		}
		time.Sleep(time.Hour)
		synctest.Wait()
		want := 19*(quiet-time.Millisecond) + quiet
		if n := len(runs); n != 1 {
			t.Fatalf("%d runs after a burst", n)
		}
		if after := <-runs; after != want {
			t.Errorf("ran after %v, not %v", after, want)
		}

		changes <- struct{}{}
		time.Sleep(time.Hour)
		synctest.Wait()
		if n := len(runs); n != 1 {
			t.Errorf("%d runs after a second save", n)
		}
		stop()
		synctest.Wait()
	})
}

// Changes that never end are looked at all the same.
func TestChangesWithoutEndAreFollowed(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		changes, runs := make(chan struct{}), make(chan time.Duration, 10)
		start := time.Now()
		ctx, stop := context.WithCancel(t.Context())
		go settle(ctx, changes, func() { runs <- time.Since(start) })
		for time.Since(start) < longest+quiet {
			changes <- struct{}{}
			time.Sleep(quiet / 2)
		}
		synctest.Wait()
		if n := len(runs); n != 1 || <-runs != longest {
			t.Errorf("%d runs, the first not after %v", n, longest)
		}
		stop()
		synctest.Wait()
	})
}

// A save that comes while the site is being made is not lost.
func TestChangeDuringARunIsFollowed(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		changes, runs := make(chan struct{}, 1), make(chan int, 10)
		ctx, stop := context.WithCancel(t.Context())
		go settle(ctx, changes, func() {
			runs <- len(runs)
			if len(runs) == 1 {
				changes <- struct{}{} // the watcher's channel holds one
				time.Sleep(time.Minute)
			}
		})
		changes <- struct{}{}
		time.Sleep(time.Hour)
		synctest.Wait()
		if n := len(runs); n != 2 {
			t.Errorf("%d runs", n)
		}
		stop()
		synctest.Wait()
	})
}

// The end of the context ends it, whether it waits for a change or for quiet, and nothing is run any more.
func TestSettleEndsWithTheContext(t *testing.T) {
	for _, changed := range []bool{false, true} {
		synctest.Test(t, func(t *testing.T) {
			changes, ended := make(chan struct{}), make(chan struct{})
			ctx, stop := context.WithCancel(t.Context())
			go func() {
				settle(ctx, changes, func() { t.Error("ran after the end") })
				close(ended)
			}()
			if changed {
				changes <- struct{}{}
			}
			stop()
			synctest.Wait()
			select {
			case <-ended:
			default:
				t.Errorf("it goes on; a change was waiting: %v", changed)
			}
			time.Sleep(time.Hour)
			synctest.Wait()
		})
	}
}
