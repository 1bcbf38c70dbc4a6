package tool

import (
	"context"
	"io"
	"os"
	"os/exec"
)

// ThisMachine is the computer the process runs on.
func ThisMachine(say io.Writer) Machine {
	return Machine{
		LookPath: exec.LookPath,
		Run: func(ctx context.Context, dir string, command ...string) ([]byte, error) {
			c := exec.CommandContext(ctx, command[0], command[1:]...)
			c.Dir = dir
			return c.CombinedOutput()
		},
		Root: os.Geteuid() == 0,
		Say:  say,
	}
}
