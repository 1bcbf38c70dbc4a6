package output

import (
	"errors"
	"syscall"
)

// isFull says whether a disk has no room left: ERROR_DISK_FULL and ERROR_HANDLE_DISK_FULL of the Windows API.
func isFull(err error) bool {
	return errors.Is(err, syscall.Errno(112)) || errors.Is(err, syscall.Errno(39)) || errors.Is(err, syscall.ENOSPC)
}
