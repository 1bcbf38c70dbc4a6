// Package desk is the author's local view of a site: it makes the site in memory, serves it on the loopback address,
// and makes it again when a file is saved.
//
// It owns the server, the watcher and the news to open browsers. It must not write a file, and it must not listen
// where another computer can reach it.
package desk

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"strconv"
	"time"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/site"
)

// Options say what to show and where.
type Options struct {
	Site    site.Options
	Folder  string // the content folder on the disk, to watch
	Port    int    // the port on 127.0.0.1; 0 for any free one
	Printer message.Printer
	Out     io.Writer // for the address and the news
	Err     io.Writer // for messages
}

// A Desk is one run: the site as last made without a fault, and the browsers that follow it.
type Desk struct {
	options Options
	shelf   shelf
	news    news
}

// New prepares a desk.
func New(o Options) *Desk { return &Desk{options: o} }

// Run makes the site and serves it until the context ends. A site with a fault is no error: the desk shows what is
// wrong until it is mended. The error is nil after an ordinary end.
func (d *Desk) Run(ctx context.Context) error {
	// The watch comes before the first making, so that no save falls between the two.
	watcher, err := watch(d.options.Folder)
	if err != nil {
		return fmt.Errorf("the content folder cannot be watched: %w", err)
	}
	defer watcher.close()
	if _, good := d.remake(); !good {
		fmt.Fprintln(d.options.Err, "The desk shows this in the browser too, until it is mended.")
	}
	listener, err := d.listen()
	if err != nil {
		return err
	}
	fmt.Fprintf(d.options.Out, "The desk is at http://%s/ and follows %s. Press Ctrl+C to stop.\n",
		listener.Addr(), d.options.Site.Name)
	following := make(chan struct{})
	go func() {
		defer close(following)
		settle(ctx, watcher.changes, quiet, d.follow)
	}()
	err = d.serve(ctx, listener)
	<-following
	return err
}

// serve answers requests until the context ends.
func (d *Desk) serve(ctx context.Context, listener net.Listener) error {
	server := &http.Server{Handler: d.Handler(), ReadHeaderTimeout: 10 * time.Second}
	// Open event streams would keep a shutdown waiting, so their context ends with ours.
	server.BaseContext = func(net.Listener) context.Context { return ctx }
	stopped := make(chan error, 1)
	stop := context.AfterFunc(ctx, func() {
		end, cancel := context.WithTimeout(context.WithoutCancel(ctx), time.Second)
		defer cancel()
		if err := server.Shutdown(end); err != nil {
			err = server.Close() // what does not end in a second is cut off
			stopped <- err
			return
		}
		stopped <- nil
	})
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		stop()
		return err
	}
	return <-stopped
}

// listen takes the port asked for, or a free one when that cannot be had.
func (d *Desk) listen() (net.Listener, error) {
	listener, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(d.options.Port)))
	if err == nil || d.options.Port == 0 {
		return listener, err
	}
	fmt.Fprintf(d.options.Err, "Port %d cannot be used, so the desk takes another one.\n", d.options.Port)
	return net.Listen("tcp", "127.0.0.1:0")
}

// follow makes the site again after a save, and tells the browsers whose page changed.
func (d *Desk) follow() {
	start := time.Now()
	faulty := d.shelf.faulty()
	changed, good := d.remake()
	took := time.Since(start).Milliseconds()
	switch _, blank := d.shelf.blank(); {
	case !good && blank:
		d.news.tell(event{name: "fault"})
	case !good:
		fmt.Fprintln(d.options.Err, "The last good site stays up until this is mended.")
		d.news.tell(event{name: "fault"})
	case len(changed) > 0:
		fmt.Fprintf(d.options.Out, "Made again in %d ms: %s.\n", took, files(len(changed)))
		d.news.tell(event{name: "changed", paths: changed})
	case faulty:
		fmt.Fprintln(d.options.Out, "Mended: the site is as it was.")
	}
}

func files(n int) string {
	if n == 1 {
		return "1 file changed"
	}
	return strconv.Itoa(n) + " files changed"
}

// remake makes the site and keeps it if it has no fault. It prints every message, and gives the paths whose bytes
// changed.
func (d *Desk) remake() (changed []string, good bool) {
	made, messages := site.Make(d.options.Site)
	if len(messages) > 0 {
		d.options.Printer.Print(d.options.Err, messages)
	}
	if made == nil {
		d.shelf.blame(messages)
		return nil, false
	}
	return d.shelf.put(made.Files), true
}
