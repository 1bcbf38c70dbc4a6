// Package cli is the command line: it reads the words a user typed, calls the packages that do the work, and prints
// what they say.
//
// It owns the commands, their options and the exit codes: 0 clean, 1 faults found, 2 wrong usage. It must hold no
// work of its own: what a command does is in the package it calls.
package cli

import (
	"errors"
	"fmt"
	"io"
	"os"
	"regexp"
	"strings"

	"github.com/alecthomas/kong"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Exit codes.
const (
	exitClean = 0
	exitFault = 1
	exitUsage = 2
)

// commands are what can be typed; kong reads the words and the help from the tags.
type commands struct {
	Press   pressCommand   `cmd:"" help:"Make the site."`
	Desk    deskCommand    `cmd:"" help:"Show the site on this computer, and follow the files as they are saved."`
	Epub    epubCommand    `cmd:"" help:"Make books of the guides, for readers to take along."`
	Packet  packetCommand  `cmd:"" help:"Make files for a USB stick or an e-mail, each whole in itself."`
	Proof   proofCommand   `cmd:"" help:"Check every guide, and write nothing."`
	Draft   draftCommand   `cmd:"" help:"Start a page from a pattern, or a small site."`
	Handout handoutCommand `cmd:"" help:"Print cards, their key and a sheet to sign in for a workshop."`
	Record  recordCommand  `cmd:"" help:"Read the code of a learner's record."`
	Reckon  reckonCommand  `cmd:"" help:"Work one calculation, or list them all."`

	about
}

// place says where the guides are.
type place struct {
	From string `help:"The content folder (${default})." default:"content" placeholder:"FOLDER"`
}

// A terminal is where a command writes.
type terminal struct {
	out     *keptWriter
	err     io.Writer
	printer message.Printer
}

// errFaults says that faults were found, and that they have been printed.
var errFaults = errors.New("faults were found")

// A fault is one thing that is wrong, and what to do about it.
type fault struct{ text, note string }

func (f fault) Error() string {
	if f.note == "" {
		return f.text
	}
	return f.text + "; " + f.note
}

// faults are found together and told together.
type faults []fault

func (l faults) Error() string {
	var lines []string
	for _, f := range l {
		lines = append(lines, f.Error())
	}
	return strings.Join(lines, "\n")
}

// complain prints an error in the form that messages have.
func (t *terminal) complain(err error) {
	var one fault
	var list faults
	if !errors.As(err, &list) {
		if !errors.As(err, &one) {
			one = fault{text: err.Error()}
		}
		list = faults{one}
	}
	for _, f := range list {
		fmt.Fprintf(t.err, "error: %s\n", f.text)
		if f.note != "" {
			fmt.Fprintf(t.err, "   note: %s\n", f.note)
		}
	}
}

// errUsage wraps a mistake in the words that were typed.
type errUsage struct{ error }

func (e errUsage) Unwrap() error { return e.error }

// Run runs one command and gives its exit code.
func Run(args []string, stdout, stderr io.Writer) int {
	kept := &keptWriter{to: stdout}
	t := &terminal{out: kept, err: stderr, printer: message.Printer{Color: colour(stderr)}}
	var c commands
	exited := -1
	parser, err := kong.New(&c,
		kong.Name("acreleaf"),
		kong.Description("Turns Markdown guides into a site whose worked examples run live."),
		kong.Writers(kept, stderr),
		kong.Exit(func(code int) { exited = code; panic(stop{}) }),
		kong.UsageOnError(),
	)
	if err != nil {
		panic(err) // the commands above are wrong, and every test of this package finds it
	}
	parser.Model.HelpFlag.Help = "Show what can be typed."
	hideAfterCommand(parser, args)
	exit := run(parser, t, args, &exited)
	if kept.err != nil {
		t.complain(kept.lost())
		return exitFault
	}
	return exit
}

// stop is how kong's own exit (after --help) comes back to Run.
type stop struct{}

func run(parser *kong.Kong, t *terminal, args []string, exited *int) (code int) {
	defer func() {
		if r := recover(); r != nil {
			if _, ok := r.(stop); !ok {
				panic(r)
			}
			code = *exited
		}
	}()
	if len(args) == 0 {
		args = []string{"--help"}
	}
	context, err := parser.Parse(args)
	if err != nil && t.out.err == nil {
		t.complain(mistyped(err))
		return exitUsage
	}
	if err == nil {
		err = context.Run(t)
	}
	var usage errUsage
	switch {
	case err == nil:
		return exitClean
	case t.out.err != nil:
		return exitFault // Run says so
	case errors.Is(err, errFaults):
		return exitFault
	case errors.As(err, &usage):
		t.complain(err)
		return exitUsage
	}
	t.complain(err)
	return exitFault
}

var withoutValue = regexp.MustCompile(`^(--[a-z-]+): .*<EOL>`)

// mistyped words what kong found wrong.
func mistyped(err error) error {
	var worded fault
	if errors.As(err, &worded) {
		return worded // by the option itself
	}
	if found := withoutValue.FindStringSubmatch(err.Error()); found != nil {
		return fault{found[1] + " has nothing after it", "write it as " + found[1] + "=VALUE"}
	}
	return fault{err.Error(), `type "acreleaf --help" to see what can be typed`}
}

// colour says whether messages may be coloured: on a terminal, unless NO_COLOR is set (no-color.org).
func colour(w io.Writer) bool {
	return os.Getenv("NO_COLOR") == "" && isTerminal(w)
}

func isTerminal(w io.Writer) bool {
	file, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
