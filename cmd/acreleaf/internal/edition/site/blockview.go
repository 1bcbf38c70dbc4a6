package site

import (
	"slices"
	"strings"

	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// formAnchor is the id of the form of a page about one block.
const formAnchor = "known"

// blockView is what the page about one block has before its text. Its form asks for the facts that its worksheets take,
// and its answers are those of the glance of the page.
func (f *fragments) blockView() *render.Block {
	work, v := f.page.Work, new(render.Block)
	for _, one := range fact.BlockFacts() {
		bound, given := factGiven(work, one)
		if bound == nil {
			continue
		}
		if n := len(v.Groups); n == 0 || v.Groups[n-1].ID != one.Group {
			group := render.FactGroup{ID: one.Group, Title: fact.BlockGroup(one.Group, f.page.Language)}
			if group.Folded = slices.Contains(fact.Folded, one.Group); group.Folded {
				group.Tells = f.tells(one)
			}
			v.Groups = append(v.Groups, group)
		}
		last := &v.Groups[len(v.Groups)-1]
		last.Facts = append(last.Facts, f.asking(bound, given, one))
	}
	linked := map[render.Link]bool{}
	for _, item := range f.page.Metadata.Glance {
		use, name, _ := strings.Cut(item.Text, ".")
		bound := work.Find(use)
		if bound == nil {
			continue // a figure that is not there was a fault
		}
		answer := render.BlockAnswer{Sheet: bound.Use.Index, Answer: f.blockAnswer(bound, name)}
		if guide := f.guideOf(bound.Sheet.Name); guide != nil && !linked[*guide] {
			answer.Guide, linked[*guide] = guide, true
		}
		v.Answers = append(v.Answers, answer)
	}
	v.Feeds = f.feedsView()
	v.Refusals, v.Cautions = f.notesOfBlock()
	return v
}

// factGiven finds the given of the page that asks for a fact: the first that stands for it and is not linked. Nil for
// none.
func factGiven(work *worksheet.Page, one fact.BlockFact) (*worksheet.Bound, *sheet.Given) {
	for _, name := range one.Givens {
		calculation, given, _ := strings.Cut(name, ".")
		for _, bound := range work.Sheets {
			if _, linked := bound.From(given); bound.Kind == construct.Worksheet && bound.Sheet.Name == calculation &&
				!linked && one.Group != "" {
				return bound, bound.Sheet.FindGiven(given)
			}
		}
	}
	return nil, nil
}

// asking is the field of a fact.
func (f *fragments) asking(bound *worksheet.Bound, g *sheet.Given, one fact.BlockFact) render.Asking {
	language := f.page.Language
	a := render.Asking{Sheet: bound.Use.Index, ID: one.ID, Given: givenView(f.page.Work, bound, g)}
	a.Given.Label, a.Given.Hint, a.Given.Typical = one.Label(language), one.Hint(language), ""
	a.Given.Lang, a.Given.HintLang = "", ""
	a.Given.Optional = false // its hint says what counts where it is empty
	a.Empty, a.Instead = a.Given.Text == "", one.Instead(language)
	a.Tells, a.First = f.tells(one), one.First
	if one.Unknown == "" {
		return a
	}
	entry, err := g.Read(one.Unknown)
	if err != nil {
		panic(err) // a test reads them all
	}
	a.Unknown, a.UnknownIn, a.Lacking = typed(bound.Use, g, entry), entry.Unit.String(), one.Lacking(language)
	if one.Later != "" {
		later, err := g.Read(one.Later)
		if err != nil {
			panic(err) // the same test
		}
		a.Later = typed(bound.Use, g, later)
	}
	return a
}

// tells is the answer that says what not knowing a fact costs; nil where the page does not work it.
func (f *fragments) tells(one fact.BlockFact) *render.Telling {
	calculation, name, _ := strings.Cut(one.Tells, ".")
	bound := f.sheetOf(calculation)
	if bound == nil {
		return nil
	}
	return &render.Telling{Sheet: bound.Use.Index, Answer: f.blockAnswer(bound, name)}
}

func (f *fragments) blockAnswer(bound *worksheet.Bound, name string) render.Answer {
	o := f.page.Work.Example(bound)
	if r := bound.Sheet.FindResult(name); r != nil {
		v := answerView(o, r)
		if one := fact.WorkedOfBlock(bound.Sheet.Name, name); one != nil {
			if label := one.Label(f.page.Language); label != "" {
				v.Label, v.Lang = label, ""
			}
		}
		return v
	}
	return render.Answer{Label: book.Label(bound.Sheet, name), Lang: labelLang(f.page.Work, bound, name),
		Shown: *shown(o, name), There: -1}
}

// guideOf is the guide that explains a calculation: the one that is about it, else the first that has a worksheet of
// it.
func (f *fragments) guideOf(calculation string) *render.Link {
	var found *book.Outline
	for _, o := range f.page.Book.Outlines {
		if o.Address.Kind != kind.Guide || o.Address.Language != f.at.Language {
			continue
		}
		at := slices.IndexFunc(o.Sheets, func(other *sheet.Sheet) bool { return other.Name == calculation })
		if at == 0 && len(o.Sheets) <= mostOfOneSubject {
			found = o
			break
		}
		if at >= 0 && found == nil {
			found = o
		}
	}
	if found == nil {
		if alike := explained[calculation]; alike != "" {
			return f.guideOf(alike)
		}
		return nil
	}
	return &render.Link{Href: f.at.To(found.Address), Text: found.Title}
}

// explained are calculations of blocks alone, each with the one whose guide explains it too.
var explained = map[string]string{
	"block-trees": "tree-density", "block-need": "tree-rate", "block-material": "feed-schedule",
}

// mostOfOneSubject is how many calculations a guide about one of them has at most.
const mostOfOneSubject = 2

// feedsView is the list of the feeds, with what is put on at each; nil where no worksheet sets days.
func (f *fragments) feedsView() *render.BlockFeeds {
	feeds := f.sheetOf("feed-schedule")
	if feeds == nil {
		return nil
	}
	v := &render.BlockFeeds{Sheet: feeds.Use.Index, Blocks: -1}
	for _, r := range feeds.Sheet.Answers() {
		if strings.HasPrefix(r.Name, "date-") {
			v.Days = append(v.Days, f.blockAnswer(feeds, r.Name))
		}
	}
	material := fact.OfBlock("feed-schedule", "material")
	v.Of = render.Answer{Label: material.Label(f.page.Language), There: -1,
		Shown: *chosen(f.page.Work, feeds, feeds.Sheet.FindGiven("material"))}
	v.Acre = []render.Answer{f.blockAnswer(feeds, "product"), f.blockAnswer(feeds, "volume")}
	if total := f.sheetOf("block-material"); total != nil {
		v.Blocks = total.Use.Index
		v.Block = []render.Answer{f.blockAnswer(total, "each"), f.blockAnswer(total, "each-volume")}
	}
	return v
}

// sheetOf is the first worksheet of the page that is of a calculation; nil for none.
func (f *fragments) sheetOf(calculation string) *worksheet.Bound {
	for _, bound := range f.page.Work.Sheets {
		if bound.Kind == construct.Worksheet && bound.Sheet.Name == calculation {
			return bound
		}
	}
	return nil
}

// notesOfBlock gathers why worksheets have no answers, and their signals. Where several worksheets of the chain speak
// of one hazard, the last does: it knows the most.
func (f *fragments) notesOfBlock() (refusals, cautions []render.SheetNotes) {
	last := map[string]*worksheet.Bound{}
	for _, bound := range f.page.Work.Sheets {
		for _, remark := range bound.Sheet.Remarks {
			last[remark.Hazard] = bound
		}
	}
	for _, bound := range f.page.Work.Sheets {
		if bound.Kind != construct.Worksheet {
			continue
		}
		var refused, warned []render.Note
		var untested []render.SheetNotes
		o := f.page.Work.Example(bound)
		for i, remark := range bound.Sheet.Remarks {
			switch {
			case remark.Signal == sheet.Refusal:
				refused = append(refused, noteView(o, i, remark))
			case remark.Signal == sheet.Note || remark.Hazard != "" && last[remark.Hazard] != bound:
			default:
				note := noteView(o, i, remark)
				if one := f.untestedOf(bound, remark); one != nil {
					untested = append(untested, render.SheetNotes{Sheet: bound.Use.Index, Notes: []render.Note{note},
						Fact: one.ID, Untested: one.Untested(f.page.Language)})
				} else {
					warned = append(warned, note)
				}
			}
		}
		refusals = withNotes(refusals, bound, refused)
		cautions = withNotes(append(cautions, untested...), bound, warned)
	}
	return refusals, cautions
}

// untestedOf is the fact that the form asks for a worksheet, and whose hazard a remark of it warns of; nil for none.
func (f *fragments) untestedOf(bound *worksheet.Bound, remark *sheet.Remark) *fact.BlockFact {
	for _, one := range fact.BlockFacts() {
		if one.Hazard == "" || one.Hazard != remark.Hazard {
			continue
		}
		if asked, _ := factGiven(f.page.Work, one); asked == bound {
			return &one
		}
	}
	return nil
}

func withNotes(list []render.SheetNotes, bound *worksheet.Bound, notes []render.Note) []render.SheetNotes {
	if len(notes) == 0 {
		return list
	}
	return append(list, render.SheetNotes{Sheet: bound.Use.Index, Notes: notes})
}

// inChain is a worksheet on a page about one block: its numbers are typed in the form, and what it warns of and refuses
// is told with the answers.
func (f *fragments) inChain(v *render.Worksheet, bound *worksheet.Bound) {
	for i, given := range bound.Sheet.Givens {
		one := fact.OfBlock(bound.Sheet.Name, given.Name)
		if one == nil {
			continue
		}
		if asked, g := factGiven(f.page.Work, *one); asked != bound || g != given {
			continue
		}
		linked := &v.Givens[i]
		linked.Kind, linked.Hint, linked.Typical, linked.Optional = render.KindLinked, "", "", false
		if len(given.Choices) > 0 {
			linked.Taken = chosen(f.page.Work, bound, given)
		} else {
			linked.Taken = shown(f.page.Work.Example(bound), given.Name)
		}
		linked.From, linked.FromLang = &render.Link{Href: "#" + formAnchor, Text: f.renderer.Words().Block.Form}, ""
	}
	for i := range v.Answers {
		for _, r := range bound.Sheet.Answers() {
			cell, _ := bound.Use.Cell(r.Name)
			if one := fact.WorkedOfBlock(bound.Sheet.Name, r.Name); one != nil && cell == v.Answers[i].Shown.Cell {
				v.Answers[i].Fact = one.ID
			}
		}
	}
	v.Notes = slices.DeleteFunc(v.Notes, func(n render.Note) bool { return n.Refusal || n.Signal != "" })
	v.Constants, v.Words = nil, nil // the page of the calculation lists the ones, and the answers above say the others
}
