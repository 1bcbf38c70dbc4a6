package cli

import (
	"context"
	"os"
	"os/signal"

	"acreleaf/cmd/acreleaf/internal/desk"
)

type deskCommand struct {
	place
	Port int `help:"The port on this computer." default:"4480"`
}

// Run shows the site until it is stopped.
func (c *deskCommand) Run(t *terminal) error {
	options, err := c.open()
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	return desk.New(desk.Options{
		Site: options, Folder: c.From, Port: c.Port, Printer: t.printer, Out: t.out, Err: t.err,
	}).Run(ctx)
}
