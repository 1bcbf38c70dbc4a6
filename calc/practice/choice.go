package practice

import (
	"fmt"
	"strconv"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// A Choice is a part that is answered without a number: one of several options is right, or several items are to be put
// in order. Which option that is, or which order, follows from the numbers of the card.
type Choice struct {
	Question string
	Options  []Option
	Items    []Item // to put in order, from the least on; nil where there are options
}

// An Option is one of those to choose from.
type Option struct {
	Text    string
	Because string // why it is right, on a card where it is
	When    Condition
}

// A Condition asks whether an option is right: find gives the calculations of the exercise by name.
type Condition func(p *sheet.Passage, find func(use string) *sheet.Use) sheet.Term

// An Item is one of those to put in order.
type Item struct {
	Text        []Piece
	Use, Result string // of the number that says its place
	Step        int    // its place as a step of the work, from 1 on; 0 for an item with a number
}

// Texts are the options or the items on the card, as they are listed.
func (c *Card) Texts(of *Choice) []string {
	var list []string
	for _, o := range of.Options {
		list = append(list, o.Text)
	}
	for _, item := range of.Items {
		text := ""
		for _, piece := range item.Text {
			if text += piece.Text; piece.Given != "" {
				text += c.Given(piece.Use, piece.Given)
			}
		}
		list = append(list, text)
	}
	return list
}

// An answer to a choice is a number, so that it is heard, marked and carried on as numbers are: the place of an option
// from 1 on; or a digit for each item, which is its place in the order.

// Key is the right answer in words, from its number and the texts as they are listed.
func (of *Choice) Key(code float64, texts []string) string {
	if of.Items == nil {
		return texts[int(code)-1]
	}
	ordered := make([]string, len(texts))
	for i, place := range strconv.Itoa(int(code)) {
		ordered[place-'1'] = texts[i]
	}
	return strings.Join(ordered, "; ")
}

// read reads an answer to a choice as a number; false for what is none.
func (of *Choice) read(text string) (code float64, ok bool) {
	n, err := strconv.Atoi(text)
	if of.Items == nil {
		return float64(n), err == nil && n >= 1 && n <= len(of.Options)
	}
	for place := range of.Items {
		ok := strings.Contains(text, strconv.Itoa(place+1))
		if !ok {
			return 0, false
		}
	}
	return float64(n), err == nil && len(text) == len(of.Items)
}

// What is kept of a choice, in order: the number of its right answer, that from the answers before, and of each option
// whether it is right.
const codeKept, againKept, optionsKept = 0, 1, 2

// askChoice puts the questions of a choice to the graph.
func (e *Placed) askChoice(g *sheet.Graph, p *Part) {
	c := coding{sheet.NewPassage(), p.Choice}
	code, right := e.code(c, func(u *placedUse) *sheet.Use { return u.at })
	for _, step := range e.Steps {
		if step.Choice == nil {
			for _, u := range step.use.all() {
				c.Instead(u, step.Result, step.heard, heardAnswer)
			}
		}
	}
	again, _ := e.code(c, (*placedUse).last)
	for _, kept := range append([]sheet.Term{codeKept: code, againKept: again}, right...) {
		c.Keep(kept)
	}
	p.coded = c.Passage
	g.Passages = append(g.Passages, p.coded)
}

// A coding makes the terms for the number of an answer to a choice.
type coding struct {
	*sheet.Passage
	of *Choice
}

func (c coding) number(v float64) sheet.Term { return c.Sheet.Number(v) }

// last is the use that works from what was heard before, where there is one.
func (u *placedUse) last() *sheet.Use {
	all := u.all()
	return all[len(all)-1]
}

// code is the number of the right answer, and of each option whether it is right.
func (e *Placed) code(c coding, at func(*placedUse) *sheet.Use) (code sheet.Term, right []sheet.Term) {
	find := func(name string) *sheet.Use { return at(e.find(name)) }
	one, none := c.number(1), c.number(0)
	code = none
	for i, o := range c.of.Options {
		is := sheet.If(o.When(c.Passage, find), one, none)
		right = append(right, is)
		code = code.Plus(is.Times(c.number(float64(i + 1))))
	}
	items := c.of.Items
	value := func(i int) sheet.Term {
		if items[i].Step > 0 {
			return c.number(float64(items[i].Step))
		}
		v, _ := c.Value(find(items[i].Use), items[i].Result)
		return v.Over(c.Quantity(1, v)) // without its unit
	}
	for i := range items {
		place := one
		for j := range items {
			if i != j {
				place = place.Plus(sheet.If(value(j).Less(value(i)), one, none))
			}
		}
		code = code.Times(c.number(10)).Plus(place)
	}
	return code, right
}

// OptionCell is the cell that is not 0 while an option is right.
func (p *Part) OptionCell(option int) int { return p.coded.KeptCell(optionsKept + option) }

// Undecided says what is wrong with a choice on the card: not just one option is right, or two items have the same
// place. It is "" where all is well.
func (c *Card) Undecided(p *Part) string {
	var right []string
	for i, o := range p.Choice.Options {
		if c.cells[p.OptionCell(i)] != 0 {
			right = append(right, o.Text)
		}
	}
	if len(p.Choice.Options) > 0 && len(right) != 1 {
		if len(right) == 0 {
			return fmt.Sprintf("on card %d no option is right", c.Number)
		}
		return fmt.Sprintf("on card %d both %q and %q are right", c.Number, right[0], right[1])
	}
	seen, texts := map[string]int{}, c.Texts(p.Choice)
	for i, item := range p.Choice.Items {
		if item.Step > 0 {
			continue
		}
		value := unit.Digits(c.value(item).Value, p.Digits, 0)
		if before, is := seen[value]; is {
			return fmt.Sprintf("on card %d %q and %q are both %s", c.Number, texts[before], texts[i], value)
		}
		seen[value] = i
	}
	return ""
}

// value is the number that an item is put in order by.
func (c *Card) value(item Item) unit.Quantity {
	return sheet.Outcome{Use: c.set.find(item.Use).at, Cells: c.cells}.Value(item.Result)
}
