package output

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// take locks a byte far behind the text, which others can so read: Windows keeps them from what is locked.
func take(f *os.File) error {
	const behind = 1 << 30
	at := &windows.Overlapped{OffsetHigh: behind}
	err := windows.LockFileEx(windows.Handle(f.Fd()),
		windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, at)
	switch {
	case errors.Is(err, windows.ERROR_LOCK_VIOLATION), errors.Is(err, windows.ERROR_IO_PENDING):
		return errTaken
	case errors.Is(err, windows.ERROR_NOT_SUPPORTED), errors.Is(err, windows.ERROR_INVALID_FUNCTION):
		return errNoLocks
	}
	return err
}

// runs says whether there is a process of that number. One that may not be opened runs.
func runs(process int) bool {
	handle, err := windows.OpenProcess(windows.SYNCHRONIZE, false, uint32(process))
	if err != nil {
		return !errors.Is(err, windows.ERROR_INVALID_PARAMETER)
	}
	defer windows.CloseHandle(handle)
	state, err := windows.WaitForSingleObject(handle, 0)
	return err != nil || state != windows.WAIT_OBJECT_0
}

// discard closes a lock and removes its file afterwards: Windows removes no file that is open. If another press has
// opened it by then, the file stays, and is that press's.
func discard(f *os.File, path string) {
	still := isStill(f, path)
	_ = f.Close()
	if still {
		_ = os.Remove(path)
	}
}
