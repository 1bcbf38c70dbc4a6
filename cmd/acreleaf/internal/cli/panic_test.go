package cli

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/alecthomas/kong"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/folder"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// failing are commands of which the program fails where the pages are joined, when it looks into a file that one shows.
type failing struct {
	Press failingPress `cmd:""`
	Proof failingProof `cmd:""`
}

type (
	failingPress struct{ pressCommand }
	failingProof struct{ proofCommand }
)

func (c *failingPress) Run(t *terminal) error {
	options, err := c.open()
	if err == nil {
		options.Content = &brittle{options.Content.(*folder.Folder), 1} // for the mark
		_, err = c.make(t, options)
	}
	return err
}

func (c *failingProof) Run(t *terminal) error {
	options, err := c.open()
	if err != nil {
		return err
	}
	options.Content = &brittle{options.Content.(*folder.Folder), 0}
	return c.tell(t, book.Check(options, site.New, proof.Rules{}))
}

// brittle is a content folder on which the program fails when it opens one file.
type brittle struct {
	*folder.Folder
	good int // how often it opens before
}

func (b *brittle) Open(name string) (fs.File, error) {
	if name == "row.txt" {
		if b.good--; b.good < 0 {
			panic("planted")
		}
	}
	return b.Folder.Open(name)
}

// When the program fails on no page alone, a press and a proof say so as of any fault, with its exit code. The old site
// is as it was, and the lock is free.
func TestAPanicBetweenThePagesIsAFault(t *testing.T) {
	t.Chdir(siteFolder(t))
	for name, text := range map[string]string{"row.txt": "A row.",
		"guides/row.md": "---\ntitle: A row\nsummary: One.\norder: 1\n---\nSee [it](../row.txt).\n"} {
		write(t, filepath.Join("content", filepath.FromSlash(name)), text)
	}
	var said bytes.Buffer
	if code := Run([]string{"press"}, &said, &said); code != exitClean {
		t.Fatalf("exit code %d\n%s", code, &said)
	}
	first, err := os.ReadFile(filepath.Join("public", "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join("content", "home.md"), "---\ntitle: Other\nsummary: Two.\n---\n")
	sentence := regexp.MustCompile(`^error: the program failed between the pages: planted \(cli\.\(\*brittle\)\.Open, ` +
		`line \d+\) \[pages-failed\]\n   note: this is a mistake in the program, .*report it, with this message and the ` +
		`folder content; .*\n1 error\n`)
	for command, end := range map[string]string{"proof": "", "press": "Nothing was written: public is as it was.\n"} {
		var c failing
		var out, err bytes.Buffer
		parser, wrong := kong.New(&c)
		if wrong != nil {
			t.Fatal(wrong)
		}
		exited := -1
		code := run(parser, &terminal{out: &keptWriter{to: &out}, err: &err}, []string{command}, &exited)
		found := sentence.FindString(err.String())
		if code != exitFault || found == "" || !strings.HasSuffix(err.String(), end) {
			t.Errorf("%s: exit code %d\n%s--\n%s", command, code, &out, &err)
		}
	}
	if now, err := os.ReadFile(filepath.Join("public", "index.html")); err != nil || !bytes.Equal(now, first) {
		t.Errorf("the old site is not as it was (%v)", err)
	}
	to, err := output.Begin("public")
	if err != nil {
		t.Fatal(err)
	}
	to.Drop()
}
