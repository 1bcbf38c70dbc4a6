package site

import (
	"bytes"
	"slices"

	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/calc/words"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

func (f *fragments) exercise(w *bytes.Buffer, b *markdown.Block) {
	f.exercises++
	v := exerciseView(f.page.Work, f.page.Work.Exercise(b), f.page.Language)
	v.Number, v.Index = f.exercises, f.exercises-1
	f.renderer.Exercise(w, v)
}

// exerciseView is an exercise with the numbers of its first card.
func exerciseView(p *worksheet.Page, e *worksheet.Exercise, language string) *render.Exercise {
	v := &render.Exercise{Name: e.Block.Name, Title: e.Title, Hint: e.Hint, Cards: e.Cards,
		Story: storyView(e, e.Story), Report: reportView(e)}
	if first := e.Practice.Uses[0].Sheet; e.Title == first.Title { // the author gave it none
		v.Lang = first.LangOf(e.Title, p.Graph.Language)
	}
	for _, part := range e.Placed.Steps {
		if part.Choice != nil {
			v.Asks = append(v.Asks, choiceView(p, e, part, language))
			continue
		}
		ask := askedView(p, part, language)
		ask.Step = !e.Placed.IsAsked(part)
		v.Asks = append(v.Asks, ask)
	}
	for i, use := range e.Practice.Uses {
		bound := e.Bounds[i]
		work := render.ExerciseWork{Index: bound.Use.Index, Title: use.Sheet.Title,
			Lang: use.Sheet.LangOf(use.Sheet.Title, p.Graph.Language)}
		work.Work = lineViews(p.Example(bound), bound)
		work.Last = linesBefore(p.Example(bound), e.Placed.Parts)
		v.Work = append(v.Work, work)
	}
	return v
}

// linesBefore is how many lines of the work come before that of the last number that is asked for.
func linesBefore(o sheet.Outcome, parts []*practice.Part) int {
	last := parts[0]
	for _, part := range parts {
		if part.Choice == nil {
			last = part
		}
	}
	lines := o.Lines(nil)
	at := slices.IndexFunc(lines, func(line sheet.Line) bool {
		return o.Use == last.At() && line.Result.Name == last.Result
	})
	if at < 0 {
		return len(lines)
	}
	return at
}

// storyView is a text of the first card.
func storyView(e *worksheet.Exercise, pieces []practice.Piece) []render.StoryPiece {
	var list []render.StoryPiece
	for _, piece := range pieces {
		list = append(list, pieceView(e, piece))
	}
	return list
}

func pieceView(e *worksheet.Exercise, piece practice.Piece) render.StoryPiece {
	v := render.StoryPiece{Text: piece.Text, Given: piece.Given != "", Picked: -1}
	first := e.Placed.Deal().Picks(1)
	for i, pick := range e.Placed.Picks() {
		if pick.Use == piece.Use && pick.Varied.Given == piece.Given {
			v.Picked, v.Text = i, practice.CardText(pick.Given, pick.Varied.Values[first[i]])
		}
	}
	for _, u := range e.Practice.Uses {
		if entry, fixed := u.Fixed[piece.Given]; fixed && u.Name == piece.Use {
			v.Text = practice.CardText(u.Sheet.FindGiven(piece.Given), entry)
		}
	}
	return v
}

// reportView is the report of the first card. What nobody asks about varies after the givens.
func reportView(e *worksheet.Exercise) []render.ReportLine {
	var list []render.ReportLine
	next := len(e.Placed.Picks())
	for _, line := range e.Practice.Report {
		v := render.ReportLine{Label: line.Label, Result: pieceView(e, line.Given)}
		if line.Given.Given == "" {
			v.Result = render.StoryPiece{Text: line.Values[e.Practice.LineDeal(line).Picks(1)[0]], Picked: next}
			next++
		}
		list = append(list, v)
	}
	return list
}

// classes tell the script what a sentence is about. What is right but for rounding counts as right; a number that is
// right but for its unit, or for an answer before it, counts as neither right nor wrong.
var classes = map[practice.Verdict]string{
	practice.Right: "right", practice.Rounded: "right", practice.Slipped: "either",
	practice.UnitMissing: "half", practice.UnitWrong: "half", practice.Carried: "half carried",
}

func askedView(p *worksheet.Page, part *practice.Part, language string) render.ExerciseAsk {
	right := worksheet.Quantity(p, part)
	v := render.ExerciseAsk{Index: part.Heard().Index, Label: part.Label(),
		Lang: part.At().Sheet.LangOf(part.Label(), p.Graph.Language), Digits: part.Digits,
		Key: right.Unit.Label(unit.Digits(right.Value, part.Digits, 0))}
	v.Units = askedUnits(part)
	w := words.OfPractice(language)
	for verdict, sentence := range practice.Sentences(w) {
		v.Verdicts = append(v.Verdicts, verdictView(practice.Verdict(verdict), sentence, v.Key))
	}
	v.Unread = part.Unread(language)
	for i, slip := range part.Slips() {
		for _, cell := range part.SlipCells(i) {
			sentence := w.Slip
			if cell.Again {
				sentence = w.SlipAgain
			}
			v.Verdicts = append(v.Verdicts,
				render.Verdict{Before: words.Fill(sentence, "slip", slip.Text), Class: "slip"})
		}
	}
	return v
}

// askedUnits are the units to choose for an answer: those that it may have, and those of what is given and worked on
// the way, so that the choice does not give the answer away. None where the answer has no unit.
func askedUnits(part *practice.Part) []render.AskedUnit {
	own := part.Units()
	if own[0].String() == "" {
		return nil
	}
	var list []render.AskedUnit
	seen := map[string]bool{}
	add := func(u unit.Unit, fits string) {
		if text := u.String(); text != "" && !seen[text] {
			seen[text] = true
			list = append(list, render.AskedUnit{Text: text, Fits: fits})
		}
	}
	for _, u := range own {
		into, _ := u.To(own[0])
		add(u, into.Text())
	}
	const most = 5
	s := part.At().Sheet
	for _, result := range s.Results {
		if len(list) < most && result.Unit.Dimension() != own[0].Dimension() {
			add(result.Unit, "")
		}
	}
	for _, given := range s.Givens {
		if len(list) < most && given.Unit.Dimension() != own[0].Dimension() && !given.Date {
			add(given.Unit, "")
		}
	}
	return list
}
