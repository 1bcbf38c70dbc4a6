package cli

import (
	"bytes"
	"errors"
	"strings"
	"testing"
	"time"
)

const blocks = "block,nitrate (ppm NO3-N),depth (in)\nNorth,12,12\n"

func TestRowsExitCodes(t *testing.T) {
	t.Chdir(t.TempDir())
	write(t, "blocks.csv", blocks)
	write(t, "faulty.csv", blocks+"South,12,12 gal\n")
	write(t, "header.csv", "block,nitrat,depth\n")
	for _, c := range []struct {
		line string
		code int
	}{
		{"reckon soil-nitrogen --rows blocks.csv", exitClean},
		{"reckon soil-nitrogen --rows=faulty.csv", exitFault},
		{"reckon soil-nitrogen --rows header.csv", exitFault},
		{"reckon soil-nitrogen --rows nowhere.csv", exitFault},
		{"reckon soil-nitrogen --rows .", exitFault},
		{"reckon soil-nitrogen depth=12in --rows blocks.csv", exitFault}, // it has a column too
		{"reckon --rows blocks.csv", exitUsage},
		{"reckon soil-nitrogen --rows blocks.csv --json", exitUsage},
		{"reckon soil-nitrogen --rows", exitUsage},
	} {
		var out, err bytes.Buffer
		if code := Run(strings.Fields(c.line), &out, &err); code != c.code {
			t.Errorf("acreleaf %s: exit code %d, not %d\n%s%s", c.line, code, c.code, &out, &err)
		}
		if clean := c.code == exitClean; clean != (err.Len() == 0) {
			t.Errorf("acreleaf %s: on standard error:\n%s", c.line, &err)
		}
	}
}

// A disk that is full gets one sentence.
func TestRowsThatCannotBeWritten(t *testing.T) {
	t.Chdir(t.TempDir())
	write(t, "blocks.csv", blocks)
	var err bytes.Buffer
	code := Run([]string{"reckon", "soil-nitrogen", "--rows", "blocks.csv"}, full{}, &err)
	const want = "error: what this command prints could not be written: no room\n" +
		"   note: free some space, or let it print to another place, and try again\n"
	if code != exitFault || err.String() != want {
		t.Errorf("exit code %d: %s", code, &err)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no room") }

// Progress is told on a terminal only, when the work takes long, and leaves nothing there.
func TestProgress(t *testing.T) {
	for _, c := range []struct {
		name string
		p    progress
		want string
	}{
		{"long", progress{since: time.Now().Add(-time.Hour)}, "\r4096 rows\r         \r"},
		{"short", progress{since: time.Now().Add(time.Hour)}, ""},
		{"no terminal", progress{since: time.Now().Add(-time.Hour), quiet: true}, ""},
	} {
		var said bytes.Buffer
		c.p.to = &said
		c.p.show(4096)
		c.p.clear()
		c.p.clear()
		if said.String() != c.want {
			t.Errorf("%s: said %q", c.name, &said)
		}
	}
}
