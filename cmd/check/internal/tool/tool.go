// Package tool finds the programs that the checks call and, where one is missing, gets it by the ordinary client:
// apt-get for a program, npm for the packages that the lock file in cmd/check/browser names.
//
// The package owns what counts as being there and the sentence a person reads when it is not. It must not install
// anything that is there already, fetch anything by another road, or let a missing tool pass without a word.
package tool

import (
	"context"
	"fmt"
	"io"
	"strings"
)

// A Tool is a program that some step calls.
type Tool struct {
	Name   string   // the command, as looked for on the PATH
	Debian []string // the Debian packages that bring it
	For    string   // what it is needed for, to end the sentence "is needed to ..."
	Note   string   // one more sentence for a person who installs it; may be empty
	// Enough says why the program that was found will not do; nil when being there is enough.
	Enough func(ctx context.Context, m Machine) error
}

// A Machine is what setting up asks of the computer it runs on.
type Machine struct {
	LookPath func(name string) (string, error)
	// Run runs a command to its end in the folder dir and gives all that it printed.
	Run  func(ctx context.Context, dir string, command ...string) ([]byte, error)
	Root bool      // whether this process may install packages as it is
	Say  io.Writer // where the person watching reads what is being done
}

// Find makes sure of every tool and gives, by name, why one is not available. Tools that are there are left alone.
func Find(ctx context.Context, m Machine, tools []Tool) map[string]error {
	missing := map[string]error{}
	var a apt
	for _, t := range tools {
		why := t.there(ctx, m)
		if why == nil {
			continue
		}
		fmt.Fprintf(m.Say, "setup: %v; installing %s with apt-get\n", why, strings.Join(t.Debian, ", "))
		failure := a.install(ctx, m, t.Debian)
		if failure == nil {
			failure = t.there(ctx, m)
		}
		if failure != nil {
			missing[t.Name] = &Missing{Tool: t, Why: failure}
		}
	}
	return missing
}

// there gives nil when the tool can be used as it is.
func (t Tool) there(ctx context.Context, m Machine) error {
	if _, err := m.LookPath(t.Name); err != nil {
		return fmt.Errorf("%s is not on this machine", t.Name)
	}
	if t.Enough == nil {
		return nil
	}
	return t.Enough(ctx, m)
}

// Missing is a tool that is not there and could not be installed. Its text says how a person installs it.
type Missing struct {
	Tool Tool
	Why  error
}

func (e *Missing) Error() string {
	packages := strings.Join(e.Tool.Debian, " ")
	text := fmt.Sprintf("%s is needed to %s, and could not be installed: %v\n"+
		"Install it and run again. On Debian or Ubuntu: apt-get install %s\n"+
		"On another system: get %s with its own package manager, so that the command %s is on the PATH.",
		e.Tool.Name, e.Tool.For, e.Why, packages, e.Tool.Name, e.Tool.Name)
	return strings.TrimSuffix(text+"\n"+e.Tool.Note, "\n")
}

func (e *Missing) Unwrap() error { return e.Why }
