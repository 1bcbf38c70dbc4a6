package output

import (
	"errors"
	"syscall"
)

// isFull says whether a disk has no room left: ERROR_DISK_FULL and ERROR_HANDLE_DISK_FULL of the Windows API.
func isFull(err error) bool {
	return errors.Is(err, syscall.Errno(112)) || errors.Is(err, syscall.Errno(39)) || errors.Is(err, syscall.ENOSPC)
}

// isBusy says whether another program has a file open and lets nobody change it: ERROR_SHARING_VIOLATION and
// ERROR_LOCK_VIOLATION.
func isBusy(err error) bool {
	return errors.Is(err, syscall.Errno(32)) || errors.Is(err, syscall.Errno(33)) || errors.Is(err, syscall.EBUSY)
}

// isTooLong says whether a name is longer than the system takes: ERROR_FILENAME_EXCED_RANGE of the Windows API.
func isTooLong(err error) bool { return errors.Is(err, syscall.Errno(206)) }

// noRight is why a file may not be written. Windows denies the access to a file that is open, too.
const noRight = "its folder is read-only or another program has it open"
