package output

import (
	"sync"
	"sync/atomic"
)

// each is the function each with as many goroutines as the writer has workers.
func (w *Writer) each(n int, do func(i int) error) error { return each(w.workers, n, do) }

// each calls do for 0 to n-1 from some goroutines. After an error it starts no more, and gives the error of the lowest
// number.
func each(workers, n int, do func(i int) error) error {
	var next atomic.Int64
	var failed atomic.Bool
	errs := make([]error, n)
	var wait sync.WaitGroup
	for range min(workers, n) {
		wait.Go(func() {
			for !failed.Load() {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				if errs[i] = do(i); errs[i] != nil {
					failed.Store(true)
				}
			}
		})
	}
	wait.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
