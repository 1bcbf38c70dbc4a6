package site

import (
	"strings"

	"acreleaf/calc/practice"
	"acreleaf/calc/words"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// choiceView is a choice with the numbers of the first card.
func choiceView(p *worksheet.Page, e *worksheet.Exercise, part *practice.Part, language string) render.ExerciseAsk {
	v := render.ExerciseAsk{Index: part.Heard().Index, Label: part.Label(), Unread: part.Unread(language),
		Order: part.Choice.Items != nil}
	for i, o := range part.Choice.Options {
		cell := part.OptionCell(i)
		v.Options = append(v.Options, render.AskedOption{Text: []render.StoryPiece{{Text: o.Text, Picked: -1}},
			Because: o.Because, When: cell, Holds: p.Cells[cell] != 0})
	}
	for _, item := range part.Choice.Items {
		one := render.AskedOption{Text: storyView(e, item.Text)}
		for i, use := range e.Practice.Uses {
			if use.Name == item.Use {
				one.Value = shown(p.Example(e.Bounds[i]), item.Result)
			}
		}
		v.Options = append(v.Options, one)
	}
	var texts []string
	for _, o := range v.Options {
		text := ""
		for _, piece := range o.Text {
			text += piece.Text
		}
		texts = append(texts, text)
	}
	v.Key = part.Choice.Key(worksheet.Quantity(p, part).Value, texts)
	sentences := practice.Sentences(words.OfPractice(language))
	for _, verdict := range []practice.Verdict{practice.Right, practice.Carried, practice.Unknown} {
		v.Verdicts = append(v.Verdicts, verdictView(verdict, sentences[verdict], v.Key))
	}
	return v
}

// verdictView is the sentence of a verdict, with the right answer where it tells that.
func verdictView(verdict practice.Verdict, sentence, key string) render.Verdict {
	before, after, keyed := strings.Cut(sentence, "{answer}")
	v := render.Verdict{Before: before, After: after, Class: classes[verdict]}
	if keyed {
		v.Key = key
	}
	return v
}
