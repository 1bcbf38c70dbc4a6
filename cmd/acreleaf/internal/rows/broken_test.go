package rows

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"strings"
	"testing"
	"testing/iotest"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/message"
)

var errDisk = errors.New("the disk is gone")

func onceShaken(t *testing.T) map[string]sheet.Entry {
	t.Helper()
	once, err := harvest.FindGiven("shaken").Read("once")
	if err != nil {
		t.Fatal(err)
	}
	return map[string]sheet.Entry{"shaken": once}
}

// broken runs a job that breaks off, and gives the sentence.
func broken(t *testing.T, in io.Reader, out io.Writer) (Tally, string) {
	t.Helper()
	tally, err := Job{Sheet: harvest, Typed: onceShaken(t), Name: "blocks.csv", In: in, Out: out,
		Report: func(m message.Message) { t.Errorf("said %s", m.Text) }, Progress: func(int) {}}.Run()
	if err == nil {
		t.Fatal("no error")
	}
	if !errors.Is(err, errDisk) && !errors.Is(err, errLong) {
		t.Errorf("%v does not say what happened", err)
	}
	return tally, err.Error()
}

const fewRows = "bloom,wait\n2027-02-14,150 days\n2027-02-14,151 days\n2027-02-14,152 da"

// A reader that fails half way: the whole rows before that come out, and the row that is cut does not.
func TestReaderFails(t *testing.T) {
	gone := iotest.ErrReader(&fs.PathError{Op: "read", Path: "/mount/blocks.csv", Err: errDisk})
	for name, in := range map[string]io.Reader{
		"at once":      gone,
		"in a row":     io.MultiReader(strings.NewReader(fewRows), gone),
		"byte by byte": io.MultiReader(iotest.OneByteReader(strings.NewReader(fewRows)), gone),
	} {
		var out bytes.Buffer
		tally, sentence := broken(t, in, &out)
		rows, line := 2, "4"
		if name == "at once" {
			rows, line = 0, "1"
		}
		if want := "blocks.csv could not be read from line " + line + " on: the disk is gone"; sentence != want {
			t.Errorf("%s: %s", name, sentence)
		}
		if tally.Rows != rows || rows > 0 && strings.Count(out.String(), "\n") != rows+1 {
			t.Errorf("%s: %+v\n%s", name, tally, &out)
		}
	}
	_, sentence := broken(t, strings.NewReader(fewRows+"ys\n\""+strings.Repeat("x", maxRow)), io.Discard)
	if want := "blocks.csv, line 5: a row is longer than 1 MB; see that "; !strings.HasPrefix(sentence, want) {
		t.Error(sentence)
	}
}

// A writer that fails at the first byte, half way, or at the last of them stops the work there.
func TestWriterFails(t *testing.T) {
	many := fewRows[:strings.LastIndex(fewRows, "2027")] + strings.Repeat("2027-02-14,150 days\n", 20_000)
	var all bytes.Buffer
	job := Job{Sheet: harvest, Typed: onceShaken(t), In: strings.NewReader(many), Out: &all, Progress: func(int) {}}
	whole, err := job.Run()
	if err != nil {
		t.Fatal(err)
	}
	for _, room := range []int{0, all.Len() / 2, all.Len() - 1} {
		out := &small{room: room}
		tally, sentence := broken(t, strings.NewReader(many), out)
		if sentence != "the rows could not be written: the disk is gone" {
			t.Error(sentence)
		}
		if !bytes.Equal(out.written.Bytes(), all.Bytes()[:room]) {
			t.Errorf("%d bytes were written that are not the first of all", out.written.Len())
		}
		if room < all.Len()-1 && tally.Rows >= whole.Rows {
			t.Errorf("with room for %d bytes it went on to the end", room)
		}
	}
}

// A small writer has room for so many bytes.
type small struct {
	room    int
	written bytes.Buffer
}

func (w *small) Write(p []byte) (int, error) {
	if n := w.room - w.written.Len(); n < len(p) {
		w.written.Write(p[:n])
		return n, &fs.PathError{Op: "write", Path: "/mount/out.csv", Err: errDisk}
	}
	return w.written.Write(p)
}
