package cli

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"syscall"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/desk"
)

type deskCommand struct {
	place
	Port  port `help:"The port on this computer (${default}); 0 for any that is free." default:"4480" placeholder:"N"`
	Share bool `help:"Let other devices on this network see the desk, such as a phone."`
}

// A port is a number of a TCP port, or 0.
type port int

// UnmarshalText reads a port that was typed.
func (p *port) UnmarshalText(text []byte) error {
	number, err := strconv.ParseUint(string(text), 10, 16)
	if err != nil {
		return fmt.Errorf("a port is a whole number from 0 to 65535, and this is %q", text)
	}
	*p = port(number)
	return nil
}

// Run shows the site until it is stopped.
func (c *deskCommand) Run(t *terminal) error {
	// The desk opens the folder itself, and again when another one is in its place.
	root, err := os.OpenRoot(c.From)
	if err != nil {
		return cannotOpen(c.From, err)
	}
	_ = root.Close() // it was only tried
	var progress io.Writer
	if isTerminal(t.err) {
		progress = t.err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	return desk.New(desk.Options{
		Site: book.Options{Name: filepath.ToSlash(filepath.Clean(c.From))}, Folder: c.From,
		Port: int(c.Port), Share: c.Share, Code: colour(t.out),
		Printer: t.printer, Out: t.out, Err: t.err, Progress: progress,
	}).Run(ctx)
}
