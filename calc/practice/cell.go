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
		return p.coded.KeptCell(codeKept)
	}
	cell, _ := p.use.at.Cell(p.Result)
	return cell
}

// Heard is the use of the graph that an answer is put into.
func (p *Part) Heard() *sheet.Use { return p.heard }

// HeardCell is the cell that an answer is put into, for what comes after it.
func (p *Part) HeardCell() int {
	cell, _ := p.heard.Cell(heardAnswer)
	return cell
}

// AgainCell is the cell of what is right for the answers that were heard before; -1 where none comes before.
func (p *Part) AgainCell() int {
	if p.Choice != nil {
		return p.coded.KeptCell(againKept)
	}
	if p.use.twin == nil {
		return -1
	}
	cell, _ := p.use.twin.Cell(p.Result)
	return cell
}

// A SlipCell is where a page finds what a slip gives.
type SlipCell struct {
	Value int
	Open  int  // the cell that is 0 while nobody can make the slip; -1 for one that is always open
	Again bool // from the answers before; else as the card has it
}

// SlipCells are those of a slip, by its place among the slips of the part.
func (p *Part) SlipCells(slip int) []SlipCell {
	var cells []SlipCell
	for i, u := range p.slips[slip].uses {
		value, open := u.SlipCells(p.slips[slip].slip)
		cells = append(cells, SlipCell{value, open, i > 0})
	}
	return cells
}
