package site

import (
	"cmp"
	"strings"

	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
	"acreleaf/calc/words"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
)

// citations numbers the sources of one page in the order in which the page first uses them.
type citations struct {
	edition *edition
	from    page.Address
	list    []render.Reference
	numbers map[string]int
	uses    int
}

func (e *edition) newCitations(from page.Address) *citations {
	return &citations{edition: e, from: from, numbers: map[string]int{}}
}

// source is a source as the page tells it, in its language.
func (c *citations) source(id string) config.Reference {
	return c.edition.tell(id, c.from.Language).reference
}

// A sourceText is a source in the words of one language.
type sourceText struct {
	reference config.Reference
	view      render.Source
}

// sourceID tells a source in the language of an address from all others.
type sourceID struct{ id, language string }

// tell is a source in the language of an address. It is put together once for all pages.
func (e *edition) tell(id, language string) *sourceText {
	key := sourceID{id, language}
	if known, ok := e.told.Load(key); ok {
		return known.(*sourceText)
	}
	r := e.Sources[id]
	own := cmp.Or(language, e.Site.Languages[0])
	r.Source = r.In(own)
	r.Note = cmp.Or(r.Notes[own], r.Note)
	known, _ := e.told.LoadOrStore(key, &sourceText{r, e.sourceView(r, language)})
	return known.(*sourceText)
}

// figure cites the source of a figure.
func (c *citations) figure(r config.Reference, lang, text string) render.Cite {
	number := c.listed(r)
	c.uses++
	list := &c.list[number-1]
	list.Uses = append(list.Uses, render.Use{Cite: c.uses, Text: text, Lang: lang})
	return render.Cite{Source: number, Use: c.uses}
}

// constant cites the sources of a figure that a calculation takes as known, the main one first.
func (c *citations) constant(k *sheet.Constant, lang, text string) []render.Origin {
	var origins []render.Origin
	for _, id := range k.Sources {
		r := c.source(id)
		o := render.Origin{Text: citation(r)}
		if r.Authors == "" {
			o.Lang = c.edition.titleLang(r, c.from.Language)
		}
		if r.Kind != fact.Definition {
			o.Cite = c.figure(r, lang, text)
		}
		origins = append(origins, o)
	}
	return origins
}

func (c *citations) reference(r config.Reference) render.Reference {
	reference := render.Reference{Entry: c.edition.tell(r.ID, c.from.Language).view}
	if c.edition.Sources.AnyListed() && r.Kind != fact.Definition { // the page of sources has no definitions
		reference.Href = c.from.To(sourcesAddress(c.from.Language)) + "#" + r.ID
	}
	return reference
}

// numbersOf are the numbers of sources in the page's list, without those of definitions.
func (c *citations) numbersOf(ids []string) []int {
	var numbers []int
	for _, id := range ids {
		if number := c.number(id); number != 0 {
			numbers = append(numbers, number)
		}
	}
	return numbers
}

// number is the number of a source in the page's list, which a cell of a table has beside its figure; 0 for a
// definition.
func (c *citations) number(id string) int {
	r := c.source(id)
	if r.Kind == fact.Definition {
		return 0
	}
	return c.listed(r)
}

// listed is the number of a source in the page's list, to which it comes if it is not there yet. A definition that a
// figure of the text cites is listed too.
func (c *citations) listed(r config.Reference) int {
	if c.numbers[r.ID] == 0 {
		c.list = append(c.list, c.reference(r))
		c.numbers[r.ID] = len(c.list)
	}
	return c.numbers[r.ID]
}

// constants lists the figures that the answers of a sheet rest on.
func (c *citations) constants(s *sheet.Sheet, language string) []render.Constant {
	var views []render.Constant
	for _, k := range s.Constants {
		if k.OnlySlips {
			continue
		}
		v := render.Constant{Label: k.Label, Text: cmp.Or(k.Reads, k.Quantity.String()), Note: k.Note,
			Lang: s.LangOf(k.Label, language), NoteLang: s.LangOf(k.Note, language)}
		if k.Table != nil { // there is no one figure to show, and its lists all read alike
			v.Label, v.Text, v.TextLang = "", k.Label, v.Lang
		}
		if kind := c.edition.Sources.LeastSure(k.Sources); kind != fact.Definition {
			v.Kind = string(kind)
		}
		v.Origins = c.constant(k, v.TextLang, v.Text)
		views = append(views, v)
	}
	return views
}

// citation is a source in a few words: "Pelham and Ortega 2019".
func citation(r config.Reference) string {
	return strings.TrimSpace(cmp.Or(r.Authors, r.Title) + " " + r.Year)
}

// meaning is what a source says that a figure is of: "136 lb" in the prose is its "136 lb N". It is empty when the
// source has no such text.
func (c *citations) meaning(r config.Reference, text string) string {
	for _, f := range r.Figures {
		if f.Text == text || strings.HasPrefix(f.Text, text+" ") {
			return cmp.Or(f.Says(cmp.Or(c.from.Language, c.edition.Site.Languages[0])), f.For)
		}
	}
	return ""
}

// sourceView is a source as the bibliography of a language has it.
func (e *edition) sourceView(r config.Reference, language string) render.Source {
	v := render.Source{
		ID: r.ID, Authors: r.Authors, Year: r.Year, Title: r.Title, Publisher: r.Publisher,
		TitleLang: e.titleLang(r, language),
		Address:   r.Address, Number: r.Number, Kind: string(r.Kind), Note: r.Note,
	}
	main := e.Site.Languages[0]
	for _, f := range r.Figures {
		own := f.Says(cmp.Or(language, main))
		said := render.Figured{Text: figureIn(f, language), For: cmp.Or(own, f.Says(main), f.For)}
		if own == "" && language != "" && language != main { // sources.yaml is in the main language
			said.Lang = main
		}
		v.Figures = append(v.Figures, said)
	}
	return v
}

// titleLang is the language of a title, where it is not that of the page: works keep the titles they came out under.
func (e *edition) titleLang(r config.Reference, language string) string {
	main := e.Site.Languages[0]
	own := main
	if _, built := fact.FindSource(r.ID); built {
		own = words.English
	}
	if own == cmp.Or(language, main) || r.Title != e.Sources[r.ID].Title {
		return ""
	}
	return own
}

// figureIn writes a figure of a source in a language.
func figureIn(f config.SourceFigure, language string) string {
	if language == "" {
		return f.Text
	}
	own := f.Range.Unit.In(words.Language(language))
	low, high, ranged := strings.Cut(strings.Replace(f.Text, f.Range.Unit.String(), own.String(), 1), " to ")
	if !ranged {
		return low
	}
	return own.Between(low, high)
}
