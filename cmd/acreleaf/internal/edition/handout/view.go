package handout

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"
	"unicode/utf8"

	"acreleaf/calc/practice"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// view is all that is printed for a page.
func (e *edition) view(p *book.Page) (*render.Handout, error) {
	css, err := style()
	if err != nil {
		return nil, err
	}
	h := &render.Handout{Title: p.Metadata.Title, Paper: e.Paper, Style: css}
	for i, exercise := range p.Work.Exercises {
		v, err := e.exercise(p, exercise)
		if err != nil {
			return nil, err
		}
		v.Number = i + 1
		h.Exercises = append(h.Exercises, v)
	}
	return h, nil
}

func (e *edition) exercise(p *book.Page, of *worksheet.Exercise) (*render.HandedExercise, error) {
	set, err := practice.NewSet(of.Practice, p.Language)
	if err != nil {
		return nil, err
	}
	v := &render.HandedExercise{Title: of.Title, Story: keyStory(of)}
	for _, part := range set.Parts {
		ask := render.HandedAsk{Label: part.Label(), Digits: part.Digits, Unit: part.Units()[0].String()}
		if part.Choice != nil {
			ask.Chosen, ask.Order = true, part.Choice.Items != nil
		}
		for _, slip := range part.Slips() {
			ask.Slips = append(ask.Slips, slip.Text)
		}
		v.Asks = append(v.Asks, ask)
	}
	for _, step := range stepsOf(set) {
		v.Steps = append(v.Steps, render.HandedStep{Label: step.Label(), Unit: step.Units()[0].String()})
	}
	for _, u := range of.Practice.Uses {
		for _, varied := range u.Varied {
			v.Givens = append(v.Givens, render.HandedGiven{Label: u.Sheet.FindGiven(varied.Given).Label})
		}
	}
	for number := max(e.First, 1); number <= cmp.Or(e.Last, of.Cards); number++ {
		card, err := set.Card(number)
		if err != nil {
			return nil, err
		}
		one := cardOf(of, card)
		for _, step := range stepsOf(set) {
			one.Steps = append(one.Steps, answerTo(card, step))
		}
		if e.Site.Address != "" {
			address := fmt.Sprintf("%s%s#card-%s-%d", e.Site.Address, p.Address, of.Block.Name, number)
			if one.Code, err = codeOf(address); err != nil {
				return nil, fmt.Errorf("%s as a QR code: %w", address, err)
			}
		}
		if v.Cards = append(v.Cards, one); len(v.Cards) == 1 {
			v.Work = workOf(of, card)
		}
	}
	leaveOutSlips(v)
	v.PerSide = perSide(v, e.PerSide)
	for i := range v.Givens {
		takeUnit(v, i)
	}
	return v, nil
}

// perSide is how many cards of an exercise are on a side: as many as are asked for, or fewer where the longest story
// and what is asked would leave no room for the work.
func perSide(v *render.HandedExercise, asked int) int {
	longest := 0
	for _, c := range v.Cards {
		length := 0
		for _, piece := range c.Story {
			length += utf8.RuneCountInString(piece.Text)
		}
		longest = max(longest, length)
	}
	lines := 0 // of a report with its head and the gaps around it, and of options
	if first := v.Cards[0]; len(first.Report) > 0 {
		lines = 3 + len(first.Report)
	}
	for _, options := range v.Cards[0].Options {
		lines += len(options)
	}
	// About so many letters are in a line, what is asked takes so many lines, and there may be so many of text.
	for _, card := range []struct{ perSide, letters, ofAsk, most int }{{4, 40, 4, 14}, {2, 85, 2, 14}} {
		if card.perSide <= asked && longest/card.letters+1+lines+card.ofAsk*len(v.Asks) <= card.most {
			return card.perSide
		}
	}
	return 1
}

// cardOf is a card with its row of the key.
func cardOf(of *worksheet.Exercise, card *practice.Card) render.HandedCard {
	v := render.HandedCard{Number: card.Number, Story: storyOf(of, func(piece practice.Piece) string {
		return card.Given(piece.Use, piece.Given)
	})}
	for _, line := range of.Practice.Report {
		v.Report = append(v.Report, render.ReportLine{Label: line.Label,
			Result: render.StoryPiece{Text: card.LineText(line), Picked: -1}})
	}
	for _, u := range of.Practice.Uses {
		for _, varied := range u.Varied {
			v.Givens = append(v.Givens, card.Given(u.Name, varied.Given))
		}
	}
	for _, part := range card.Parts() {
		if part.Choice != nil {
			v.Options = append(v.Options, card.Texts(part.Choice))
		} else {
			v.Options = append(v.Options, nil)
		}
	}
	v.Keys = keysOf(of, card)
	return v
}

// storyOf is the story with something in the place of each given.
func storyOf(of *worksheet.Exercise, given func(practice.Piece) string) []render.StoryPiece {
	var list []render.StoryPiece
	for _, piece := range of.Story {
		if piece.Given == "" {
			list = append(list, render.StoryPiece{Text: piece.Text})
			continue
		}
		list = append(list, render.StoryPiece{Text: given(piece), Given: true})
	}
	return list
}

// keyStory is the story with the labels of what varies, and with what is the same on every card.
func keyStory(of *worksheet.Exercise) []render.StoryPiece {
	var list []render.StoryPiece
	for _, piece := range of.Story {
		part := render.StoryPiece{Text: piece.Text}
		for _, u := range of.Practice.Uses {
			if piece.Given == "" || u.Name != piece.Use {
				continue
			}
			given := u.Sheet.FindGiven(piece.Given)
			if entry, fixed := u.Fixed[piece.Given]; fixed {
				part.Text = practice.CardText(given, entry)
			} else {
				part.Text, part.Given = given.Label, true
			}
		}
		list = append(list, part)
	}
	return list
}

// workOf is how a card is worked, by calculation, as far as it is asked for. Of the ways that a line can go, the one
// that is taken is there.
func workOf(of *worksheet.Exercise, card *practice.Card) []render.HandedWork {
	var list []render.HandedWork
	for i, u := range of.Practice.Uses {
		work, last := render.HandedWork{Title: u.Sheet.Title}, lastNeeded(of.Practice, u)
		for _, line := range card.Outcome(i).Lines(nil) {
			if !line.Taken || slices.Index(u.Sheet.Results, line.Result) > last {
				continue
			}
			one := render.Line{Symbols: template.HTML(line.Symbols), Bare: line.Bare, When: -1}
			for _, numbers := range line.Numbers {
				one.Numbers = append(one.Numbers, template.HTML(numbers))
			}
			work.Lines = append(work.Lines, one)
		}
		list = append(list, work)
	}
	return list
}

// lastNeeded is the place of the last step or answer of a calculation that is asked for, or that another one takes.
func lastNeeded(e *practice.Exercise, u *practice.Use) int {
	last := -1
	need := func(use, name string) {
		if result := u.Sheet.FindResult(name); use == u.Name && result != nil {
			last = max(last, slices.Index(u.Sheet.Results, result))
		}
	}
	for _, ask := range e.Asks {
		need(ask.Use, ask.Result)
	}
	for _, other := range e.Uses {
		for _, link := range other.Links {
			need(link.Use, link.Name)
		}
	}
	return last
}
