// Package desk is the author's local view of a site: it makes the site in memory, serves it on the loopback address,
// and makes again what a save touches.
//
// It owns the server, the watcher, the news to open browsers and what they show of it. It must not write a file, and
// without being asked to share it must not listen where another computer can reach it.
package desk

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"runtime/debug"
	"strconv"
	"time"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/folder"
	"acreleaf/cmd/acreleaf/internal/message"
)

// Options say what to show and where.
type Options struct {
	Site     book.Options // but for its content, which the desk opens itself
	Folder   string       // the content folder on the disk, to read and to watch
	Port     int          // the port on 127.0.0.1; 0 for any free one
	Share    bool         // listen where other devices on the network reach it
	Code     bool         // show the address that is shared as a QR code, too
	Printer  message.Printer
	Out      io.Writer // for the address and the news
	Err      io.Writer // for messages
	Progress io.Writer // for what takes long; nil where nobody waits for it
}

// A Desk is one run: the site as last made without a fault, and the browsers that follow it.
type Desk struct {
	options Options
	maker   *book.Maker
	root    *folder.Folder // the content folder; nil while it cannot be opened
	shelf   shelf
	news    news
	limits  limits
}

// New prepares a desk.
func New(o Options) *Desk {
	return &Desk{options: o, maker: book.NewMaker(o.Site, site.New), limits: usualLimits}
}

// frugal is how much memory the collector lets lie, in percent of what is in use. A desk stands all day beside an
// editor and a browser, and is idle between two saves. Only the first making, of every page, has the room of a press.
const frugal = 25

// Run makes the site and serves it until the context ends. A site with a fault is no error: the desk shows what is
// wrong until it is fixed. The error is nil after an ordinary end.
func (d *Desk) Run(ctx context.Context) error {
	debug.SetGCPercent(frugal)
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	first := make(chan error, 1)
	go d.work(ctx, first)
	// What is read may not come for minutes, as from a shared folder. An end does not wait for it.
	select {
	case <-ctx.Done():
		return nil
	case err := <-first:
		if err != nil {
			return err
		}
	}
	listener, err := d.listen()
	if err != nil {
		return err
	}
	d.greet(listener)
	return d.serve(ctx, listener)
}

// work makes the site, and again after each save, until the context ends. It says when there is something to show, or
// why nothing can be.
func (d *Desk) work(ctx context.Context, first chan<- error) {
	// The watch comes before the first making, so that no save falls between the two.
	watcher, err := watch(d.options.Folder, d.options.Site.Name, d.tell, reportsOfTheSystem)
	if err != nil {
		first <- fmt.Errorf("the content folder cannot be watched: %w", err)
		return
	}
	defer watcher.close()
	defer d.closeRoot()
	done, frugalAgain := d.wait(), book.GiveRoom()
	_, good := d.remake(book.Changes{Everything: true})
	frugalAgain()
	done()
	if !good {
		d.tell("The desk shows this in the browser too, until it is fixed.")
	}
	first <- nil
	settle(ctx, watcher.changes, func() { d.follow(watcher.take()) })
}

// tell gives the author a sentence beside the messages.
func (d *Desk) tell(text string) { fmt.Fprintln(d.options.Err, text) }

// patient is how long a first making may take before there is a word about it.
const patient = time.Second

// wait says that the first making takes long, if it does. It gives the function that ends it.
func (d *Desk) wait() func() {
	if d.options.Progress == nil {
		return func() {}
	}
	timer := time.AfterFunc(patient, func() {
		fmt.Fprintln(d.options.Progress, "Making every page. After a save, only what it touches is made again.")
	})
	return func() { timer.Stop() }
}

// serve answers requests until the context ends, or no more of them can be answered.
func (d *Desk) serve(ctx context.Context, listener net.Listener) error {
	server := &http.Server{Handler: d.Handler(), ReadTimeout: d.limits.ask, IdleTimeout: d.limits.idle,
		WriteTimeout: d.limits.write, MaxHeaderBytes: 64 << 10}
	// Nobody waits for what is cut off: the pages go with the desk.
	defer context.AfterFunc(ctx, func() { _ = server.Close() })()
	err := server.Serve(listener)
	_ = server.Close()
	if errors.Is(err, http.ErrServerClosed) {
		return nil
	}
	return fmt.Errorf("the desk can answer no more requests: %w; start it again", err)
}

// follow makes the site again after a save, and tells the browsers.
func (d *Desk) follow(c book.Changes) {
	start := time.Now()
	faulty := len(d.shelf.wrong()) > 0
	changed, good := d.remake(c)
	took := time.Since(start).Milliseconds()
	_, blank := d.shelf.blank()
	switch {
	case !good && !blank:
		d.tell("The last good site stays up until this is fixed.")
	case changed > 0:
		fmt.Fprintf(d.options.Out, "Made again in %d ms: %s.\n", took, files(changed))
	case good && faulty:
		fmt.Fprintln(d.options.Out, "Fixed: the site is as it was.")
	}
	d.news.tell()
}

func files(n int) string {
	if n == 1 {
		return "1 file changed"
	}
	return strconv.Itoa(n) + " files changed"
}

// remake makes the site and keeps it if it has no fault. It prints every message, and gives how many files changed.
func (d *Desk) remake(c book.Changes) (changed int, good bool) {
	if c.Everything {
		d.open()
	}
	made, messages := d.maker.Make(c)
	if len(messages) > 0 {
		d.options.Printer.Print(d.options.Err, messages)
	}
	if made == nil {
		d.shelf.blame(messages)
		return 0, false
	}
	return d.shelf.put(made.Files), true
}

// open opens the content folder again: another one may be in its place.
func (d *Desk) open() {
	d.closeRoot()
	root, err := folder.Open(d.options.Folder)
	if err != nil {
		d.maker.Look(os.DirFS(d.options.Folder)) // it will say what is wrong
		return
	}
	d.root = root
	d.maker.Look(root)
}

func (d *Desk) closeRoot() {
	if d.root != nil {
		_ = d.root.Close() // it was only read
		d.root = nil
	}
}
