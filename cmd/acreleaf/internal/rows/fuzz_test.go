package rows

import (
	"bytes"
	"encoding/csv"
	"errors"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
)

// FuzzJob works files that nobody would make: each row that goes in comes out, as CSV that another reader takes, with
// answers or with a sentence.
func FuzzJob(f *testing.F) {
	const header = "bloom,wait,shaken,load (lb),Unit price ($/lb)\n"
	for _, row := range []string{
		"2027-02-14,150 days,once,,", "2027-02-14 to 2027-02-20,150 days,once,100,2.5", "\"a\"\"b\",,,,", "=1,-2,+3,@4,\t5",
		"2027-02-14,99 days,by-hand,<5,1 to 2", "1e999,NaN,once,0x10,--1", "2027-02-30,0,twice,\"1,000\",½",
	} {
		f.Add(header + row + "\n")
		f.Add(strings.ReplaceAll("sep=;\n"+header+row, ",", ";"))
	}
	f.Fuzz(func(t *testing.T, text string) {
		var out bytes.Buffer
		said := 0
		tally, err := Job{Sheet: harvest, Name: "blocks.csv", In: strings.NewReader(text), Out: &out,
			Report: func(m message.Message) {
				if said++; m.Text == "" || m.ID == "" || m.Span.End < m.Span.Start || m.Span.End > len(m.Source.Text) {
					t.Errorf("%q: %+v", text, m)
				}
			}, Progress: func(int) {}}.Run()
		if err != nil && !errors.Is(err, errLong) {
			t.Fatalf("%q: %v", text, err)
		}
		if said != tally.Faults || tally.Faulty > tally.Rows {
			t.Fatalf("%q: %+v, and it said %d faults", text, tally, said)
		}
		if out.Len() == 0 {
			return
		}
		reader := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(out.Bytes(), []byte("\ufeff"))))
		reader.FieldsPerRecord, reader.LazyQuotes = -1, true
		if strings.Count(out.String(), "\n") < tally.Rows {
			t.Errorf("%q: %d rows came out as\n%s", text, tally.Rows, &out)
		}
		if _, err := reader.ReadAll(); err != nil {
			t.Errorf("%q: %v in\n%s", text, err, &out)
		}
	})
}
