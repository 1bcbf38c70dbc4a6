//go:build !linux && !darwin

package output

import "errors"

func exchange(a, b string) error { return errors.ErrUnsupported }

func flushAll(string) error { return errors.ErrUnsupported }
