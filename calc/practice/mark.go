package practice

import (
	"slices"

	"acreleaf/calc/sheet"
)

// Heard is an answer as it was read. The zero Heard is no answer.
type Heard struct {
	Given  bool
	Answer float64 // in the unit that is asked for, or as it stands where no unit fits
	Bare   float64 // as it is written, without its unit
	Told   Told
	Unit   string // as it is written, where it does not fit
}

// A Mark is what an answer to a part is marked as.
type Mark struct {
	Verdict Verdict
	Slips   []*sheet.Slip // those that give the answer, of a slipped one; several where they give the same number
	Carried bool          // it was worked from an earlier answer that was not right
}

// Mark marks the answers to the parts of the card, in their order. A part without an answer has no mark: its Verdict is
// Unknown.
func (c *Card) Mark(heard []Heard) []Mark { return c.mark(c.set.Parts, heard) }

// MarkSteps is Mark for all steps.
func (c *Card) MarkSteps(heard []Heard) []Mark { return c.mark(c.set.Steps, heard) }

func (c *Card) mark(parts []*Part, heard []Heard) []Mark {
	cells := slices.Clone(c.cells)
	c.set.HearRight(cells, c.cells) // what has no answer is taken as right, for what comes after
	for i, p := range parts {
		if i < len(heard) && heard[i].Given {
			p.hear(cells, heard[i])
		}
	}
	c.set.graph.Program.Run(cells)
	marks := make([]Mark, len(parts))
	for i, p := range parts {
		marks[i] = Mark{Verdict: Unknown}
		if i < len(heard) && heard[i].Given {
			marks[i] = p.mark(cells, heard[i])
		}
	}
	return marks
}

// hear puts in an answer.
func (p *Part) hear(cells []float64, h Heard) { p.heard.Set(cells, heardAnswer, h.Answer) }

// HearRight puts in the right answers, which are in the cells of a run.
func (e *Placed) HearRight(cells, right []float64) {
	for _, p := range e.Steps {
		p.hear(cells, Heard{Answer: right[p.RightCell()]})
	}
}

// mark marks an answer by the values in the cells, as markOf does in theme/script/marks.ts.
func (p *Part) mark(cells []float64, h Heard) Mark {
	share := shareOf(p.Compared())
	said := compare(h, cells[p.RightCell()], share)
	if said <= saysUnitWrong {
		return Mark{Verdict: Verdict(said)}
	}
	gives := func(cell int) bool {
		return compare(Heard{Answer: h.Answer, Told: FitUnit}, cells[cell], share) == saysRight
	}
	if again := p.AgainCell(); again >= 0 && gives(again) {
		return Mark{Verdict: Carried, Carried: true}
	}
	m := Mark{Verdict: Verdict(said - saysShifted + int(Shifted))}
	for _, s := range p.slips {
		for i, u := range s.uses {
			value, open := u.SlipCells(s.slip)
			if (open < 0 || cells[open] != 0) && gives(value) {
				m = Mark{Slipped, append(m.Slips, s.slip), m.Carried || i > 0}
				break // one that gives it twice over is told once
			}
		}
	}
	return m
}
