//go:build unix

package folder

import "syscall"

// withoutWaiting opens a pipe at once, though nobody writes into it.
const withoutWaiting = syscall.O_NONBLOCK
