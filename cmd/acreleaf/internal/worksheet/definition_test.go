package worksheet

import (
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/fact"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
)

const definition = `title: Spray
summary: A test.
givens:
  flow: {label: Flow, example: 0.4 gal/min, range: 0.1 to 5, units: [L/min]}
  ground-speed:
    label: "Speed"
    example: 5 mi/h
    range: 0 to 20
constants:
  width: {label: Width, value: 20 in, source: common-practice}
work:
  - strip = ground_speed * width
  - rate = flow / strip
steps:
  strip: {unit: ac/h}
answers:
  rate: {label: Rate, unit: gal/ac, also: L/ha}
notes:
  - At {ground-speed}.
checks:
  fast: {when: ground_speed > "6 mi/h", say: Slow down., signal: warning}
`

var books = config.BuiltIn()

func define(text string) (*Definition, message.List) {
	d := &Definition{Name: "spray", Source: &message.Source{Name: "spray.yaml", Text: []byte(text)},
		Body: message.Span{End: len(text)}}
	return d, Define(d, books, nil)
}

func TestDefinitionBecomesASheet(t *testing.T) {
	d, messages := define(definition)
	if messages != nil {
		t.Fatal(messages)
	}
	s := d.Sheet
	if got := strings.Join(s.Names(), " "); got != "flow ground-speed strip rate" || s.Title != "Spray" {
		t.Errorf("%s: %s", s.Title, got)
	}
	if c := s.Constants[0]; !slices.Equal(c.Sources, []string{"common-practice"}) {
		t.Errorf("the constant is %+v", c.Fact)
	}
	r := s.FindResult("rate")
	if g := s.FindGiven("flow"); g.Units[0] != "L/min" || g.Low != 0.1 || r.Also != "L/ha" || !r.Answer {
		t.Errorf("%+v, %+v", g.Field, r)
	}
	again, _ := define(definition)
	other, _ := define(strings.Replace(definition, "0.1 to 5", "0.1 to 6", 1))
	if again.Sheet != s || other.Sheet == s {
		t.Error("a sheet is made once for each text")
	}
}

// FuzzDefine reads bodies that nobody would write: there is a sheet, or there are faults inside the body.
func FuzzDefine(f *testing.F) {
	f.Add(definition)
	for _, from := range []string{"flow", "20 in", ": ", "  ", "\n", "{", "- ", "0.1 to 5", "> \"6 mi/h\""} {
		for _, to := range []string{"", "|", "\"", "\t", "&a", "[", "é", "\r"} {
			f.Add(strings.Replace(definition, from, to, 1))
		}
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, messages := define(strings.ToValidUTF8(text, "?"))
		if (d.Sheet == nil) != message.HasFault(messages) {
			t.Fatalf("a sheet %v, and %v", d.Sheet != nil, messages)
		}
		for _, m := range messages {
			if m.Text == "" || m.ID == "" || m.ID == "calculation-unmade" ||
				m.Span.Start < 0 || m.Span.End < m.Span.Start || m.Span.End > len(d.Source.Text) {
				t.Errorf("%+v of %d bytes", m, len(d.Source.Text))
			}
		}
	})
}

// A check that names a hazard says the sentence of the table behind its own, with the signal word of the table.
func TestCheckTellsOfAHazard(t *testing.T) {
	for _, h := range fact.Hazards() {
		d, messages := define(strings.Replace(definition, "signal: warning", "hazard: "+h.ID, 1))
		if messages != nil {
			t.Fatal(h.ID, messages)
		}
		values := map[string]float64{"flow": 0.4, "ground-speed": 5}
		o, err := d.Sheet.Evaluate(values)
		if err != nil || len(o.Said()) != 1 {
			t.Errorf("%s is told below the limit: %v, %v", h.ID, o.Said(), err)
		}
		values["ground-speed"] = 7
		o, err = d.Sheet.Evaluate(values)
		if err != nil {
			t.Fatal(err)
		}
		got := o.Said()[len(o.Said())-1]
		if got.Signal.String() != h.Signal.String() || got.Hazard != h.ID || got.Text != "Slow down. "+h.Sentence("en") {
			t.Errorf("%s: %s %q of %q", h.ID, got.Signal, got.Text, got.Hazard)
		}
	}
}
