package cli

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// What programs read comes whole on standard output, with nothing beside it, also when there are faults; and it tells
// nothing of this machine, even when the content folder is named by its full name.
func TestProofForPrograms(t *testing.T) {
	folder := siteFolder(t)
	t.Chdir(folder)
	for _, form := range []string{"--json", "--sarif"} {
		var short string
		for _, from := range []string{"faulty", filepath.Join(folder, "faulty")} {
			var out, err bytes.Buffer
			code := Run([]string{"proof", "--from", from, form}, &out, &err)
			if code != exitFault || err.Len() > 0 || !json.Valid(out.Bytes()) {
				t.Errorf("%s %s: exit code %d\n%s--\n%s", form, from, code, &out, &err)
			}
			if !strings.Contains(out.String(), `"faulty/home.md"`) || strings.Contains(out.String(), folder) {
				t.Errorf("%s %s: %s", form, from, &out)
			}
			if short == "" {
				short = out.String()
			} else if short != out.String() {
				t.Errorf("%s is not the same for the full name", form)
			}
		}
	}
}

// The day is the one on the calendar where the clock stands, whatever day it is at Greenwich.
func TestLocalDay(t *testing.T) {
	west := time.FixedZone("", -8*3600)
	for _, c := range []struct {
		now  time.Time
		want string
	}{
		{time.Date(2026, 11, 2, 23, 59, 59, 0, west), "2026-11-02"},
		{time.Date(2026, 11, 2, 0, 0, 0, 0, west), "2026-11-02"},
		{time.Date(2026, 11, 3, 7, 0, 0, 0, time.UTC).In(west), "2026-11-02"},
	} {
		if got := localDay(c.now); got.Format(time.DateTime) != c.want+" 00:00:00" || got.Location() != time.UTC {
			t.Errorf("%v: %v", c.now, got)
		}
	}
}

// A terminal that is gone is told, and never taken for a clean proof.
func TestProofWithoutPaper(t *testing.T) {
	t.Chdir(siteFolder(t))
	full, err := os.OpenFile(os.DevNull, os.O_RDONLY, 0) // nothing can be written to it
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = full.Close() }() // it was only opened
	for _, form := range []string{"--json", "--sarif"} {
		var said bytes.Buffer
		if code := Run([]string{"proof", form}, full, &said); code != exitFault || said.Len() == 0 {
			t.Errorf("%s: exit code %d, %q", form, code, &said)
		}
	}
}
