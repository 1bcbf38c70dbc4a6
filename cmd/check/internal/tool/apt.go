package tool

import (
	"bytes"
	"context"
	"errors"
	"fmt"
)

// apt installs Debian packages. It reads the package lists afresh once, before the first package, and when that
// fails it says so again for every later one instead of trying anew.
type apt struct {
	asked   bool
	command []string // "apt-get", with sudo in front where that is needed
	refused error
}

// install puts the packages on the machine.
func (a *apt) install(ctx context.Context, m Machine, packages []string) error {
	if !a.asked {
		a.asked = true
		a.command, a.refused = aptCommand(ctx, m)
		if a.refused == nil {
			a.refused = quietly(m.Run(ctx, "", append(a.command, "update", "-q")...))
		}
	}
	if a.refused != nil {
		return a.refused
	}
	command := append(a.command[:len(a.command):len(a.command)], "install", "-y", "-q", "--no-install-recommends")
	return quietly(m.Run(ctx, "", append(command, packages...)...))
}

// aptCommand gives the words that start apt-get with the right to install.
func aptCommand(ctx context.Context, m Machine) ([]string, error) {
	if _, err := m.LookPath("apt-get"); err != nil {
		return nil, errors.New("this machine has no apt-get")
	}
	// A package must not stop to ask a question that nobody is there to answer.
	words := []string{"env", "DEBIAN_FRONTEND=noninteractive", "apt-get"}
	if m.Root {
		return words, nil
	}
	if _, err := m.LookPath("sudo"); err != nil {
		return nil, errors.New("installing needs root, and this machine has no sudo")
	}
	if _, err := m.Run(ctx, "", "sudo", "-n", "true"); err != nil {
		return nil, errors.New("installing needs root, and sudo asks for a password")
	}
	return append([]string{"sudo", "-n"}, words...), nil
}

// quietly drops what a command printed unless it failed; then its last lines are part of the reason.
func quietly(printed []byte, err error) error {
	if err == nil {
		return nil
	}
	lines := bytes.Split(bytes.TrimSpace(printed), []byte("\n"))
	const enough = 12
	lines = lines[max(0, len(lines)-enough):]
	return fmt.Errorf("%w\n%s", err, bytes.Join(lines, []byte("\n")))
}
