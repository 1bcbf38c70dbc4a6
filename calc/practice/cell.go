package practice

import "acreleaf/calc/sheet"

// Where a page finds an exercise in the cells of its graph, once that is closed.

// A Pick is a given that differs from card to card, with the cells that it fills. They are in the order of Deal.Counts.
type Pick struct {
	Use    string
	Cells  []int
	Varied Varied
	Given  *sheet.Given
}

// Deal is how the cards are dealt.
func (e *Placed) Deal() Deal { return e.deal }

// Picks are the givens that differ from card to card.
func (e *Placed) Picks() []Pick {
	var list []Pick
	for _, u := range e.uses {
		for _, v := range u.Varied {
			p := Pick{Use: u.Name, Varied: v, Given: u.Sheet.FindGiven(v.Given)}
			for _, at := range u.all() {
				cell, _ := at.Cell(v.Given)
				p.Cells = append(p.Cells, cell)
			}
			list = append(list, p)
		}
	}
	return list
}

// all are the uses of the graph that take the givens of a calculation.
func (u *placedUse) all() []*sheet.Use {
	if u.twin == nil {
		return []*sheet.Use{u.at}
	}
	return []*sheet.Use{u.at, u.twin}
}

// At is a calculation of the exercise in the graph, by its place among the uses.
func (e *Placed) At(use int) *sheet.Use { return e.uses[use].at }

// At is the use of the graph that works the answer; nil for a choice.
func (p *Part) At() *sheet.Use {
	if p.Choice != nil {
		return nil
	}
	return p.use.at
}

// RightCell is the cell of the right answer.
func (p *Part) RightCell() int {
	if p.Choice != nil {
		return p.asked.KeptCell(0)
	}
	cell, _ := p.use.at.Cell(p.Result)
	return cell
}

// Heard is the use of the graph that an answer is put into.
func (p *Part) Heard() *sheet.Use { return p.heard }

// HeardCells are the cells that an answer is put into, as Heard has it.
func (p *Part) HeardCells() (answer, bare, told int) {
	answer, _ = p.heard.Cell(heardAnswer)
	bare, _ = p.heard.Cell(heardBare)
	told, _ = p.heard.Cell(heardTold)
	return answer, bare, told
}

// VerdictCell is the cell that says whether a verdict is the one; for Unknown it is the one that is left.
func (p *Part) VerdictCell(v Verdict) int { return p.asked.CaseCell(int(v)) }

// SlipCells are the cells that say whether a slip is said: as the card has it, and from the answers before.
func (p *Part) SlipCells(slip int) []int {
	var cells []int
	for i := range p.use.all() {
		cells = append(cells, p.slips[slip].cell(i))
	}
	return cells
}
