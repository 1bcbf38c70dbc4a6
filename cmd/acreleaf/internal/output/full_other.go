//go:build !windows

package output

import (
	"errors"
	"syscall"
)

// isFull says whether a disk, or the user's share of it, has no room left.
func isFull(err error) bool {
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT)
}
