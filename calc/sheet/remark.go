package sheet

import (
	"strings"

	"acreleaf/calc/fact"
)

// A Signal is how strongly a remark speaks: as a hazard does, as a note without a signal word, or as a refusal.
type Signal uint8

// From the mildest to the strongest; Refusal withholds the answers.
const (
	Note    Signal = 0
	Notice         = Signal(fact.Notice)
	Caution        = Signal(fact.Caution)
	Warning        = Signal(fact.Warning)
	Danger         = Signal(fact.Danger)
	Refusal        = Danger + 1
)

// String is the signal word: "" for a note.
func (g Signal) String() string {
	if g == Refusal {
		return "REFUSAL"
	}
	return fact.Signal(g).String()
}

// A Remark is a sentence about the answers, said always or when a question is answered yes. {name} in the text
// stands for the value of a given, step or answer with its unit.
type Remark struct {
	Signal Signal
	Text   string
	Words  bool   // it is a case of the headline: its units are written in words
	Hazard string // the id of the hazard that it tells of; "" for none

	when   *node // nil: always
	pieces []Piece
}

// Always says a remark whatever the numbers.
var Always Value = Term{}

// Say adds a remark with a signal word that is said when the question is answered yes. What is said is an id, of the
// text remark.ID, or the text itself in a sheet without a file of texts.
func (s *Sheet) Say(signal Signal, when Value, said string) {
	s.say(signal, when, s.text("remark."+said, said))
}

func (s *Sheet) say(signal Signal, when Value, text string) {
	r := &Remark{Signal: signal, Text: text, pieces: Split(text)}
	if t := when.term(); t.n != nil {
		t.needTruth("a remark")
		r.when = t.n
	}
	s.Remarks = append(s.Remarks, r)
}

// Warn says a hazard of the table when the question is answered yes, with its signal word. The lead is what the numbers
// at hand have to do with it, as Say has it; it may be empty.
func (s *Sheet) Warn(hazard string, when Value, lead string) {
	h, known := fact.FindHazard(hazard)
	if !known {
		s.fault("there is no hazard %q", hazard)
		return
	}
	s.WarnOf(h, when, lead)
}

// Mention says a hazard of the table as a note, for what is true whatever the numbers: a signal that is always there is
// soon not read.
func (s *Sheet) Mention(hazard string, when Value, lead string) {
	before := len(s.Remarks)
	s.Warn(hazard, when, lead)
	for _, r := range s.Remarks[before:] {
		r.Signal = Note
	}
}

// WarnOf is Warn, of a hazard that may be in no table of ours.
func (s *Sheet) WarnOf(h fact.Hazard, when Value, lead string) {
	if lead != "" {
		lead = s.text("remark."+lead, lead)
	}
	text := strings.TrimSpace(lead + " " + h.Sentence(s.language()))
	if !h.Says.Has(s.language()) {
		s.foreign[text] = true
	}
	s.say(Signal(h.Signal), when, text)
	s.Remarks[len(s.Remarks)-1].Hazard = h.ID
}

// Refuse withholds the answers, with a sentence that says why and what to do, when the question is answered yes. The
// sentence is as Say has it.
func (s *Sheet) Refuse(when Value, said string) { s.Say(Refusal, when, said) }

// A Piece is a run of plain text, or a name whose value and unit are to be put in.
type Piece struct {
	Text string
	Name string // "" for plain text
	Bare bool   // the number alone, without its unit
}

// Pieces is the text, split at its {names}.
func (r *Remark) Pieces() []Piece { return r.pieces }

// Split splits the text of a remark at its {names}.
func Split(text string) []Piece {
	var pieces []Piece
	rest := text
	for {
		before, after, found := strings.Cut(rest, "{")
		if before != "" {
			pieces = append(pieces, Piece{Text: before})
		}
		if !found {
			return pieces
		}
		inside, tail, _ := strings.Cut(after, "}")
		pieces = append(pieces, readBraces(inside))
		rest = tail
	}
}

func (r *Remark) names() []string {
	var names []string
	for _, p := range r.Pieces() {
		if p.Name != "" {
			names = append(names, p.Name)
		}
	}
	return names
}
