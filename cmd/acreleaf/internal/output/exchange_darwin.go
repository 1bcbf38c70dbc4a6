package output

import (
	"errors"
	"fmt"

	"golang.org/x/sys/unix"
)

// exchange swaps two names, which APFS can and others cannot; see renamex_np(2).
func exchange(a, b string) error {
	err := unix.RenamexNp(a, b, unix.RENAME_SWAP)
	if errors.Is(err, unix.ENOTSUP) || errors.Is(err, unix.EINVAL) || errors.Is(err, unix.ENOSYS) {
		return fmt.Errorf("%w: %w", errors.ErrUnsupported, err)
	}
	return err
}

func flushAll(string) error { return errors.ErrUnsupported }
