package proof

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// sourced compares a sourced figure with the figure of its source that it names. A link to a source without a number is
// a citation.
//
// Of the figures of its kind, it names the one with which the title of the link has most words in common. A source with
// one figure of the kind needs no title. On a page in another language than the site's sources, the title has no words
// in common with any: there one figure that alone agrees is the one that is meant.
func (c *figureCheck) sourced(f *markdown.Figure, rest string) {
	source, known := c.site.Sources[f.Target]
	if !known || !c.counts(f.Text, rest) {
		return // the join reports an unknown source
	}
	if len(source.Figures) == 0 {
		c.fault("figure-unrecorded", f.TextSpan,
			fmt.Sprintf("the prose says %s, and source %q records no figures", f.Text, f.Target), record(f, source))
		return
	}
	all := c.compareAll(f, rest, source.Figures)
	fitting := ofKind(all)
	if agreeing := agreeingOf(fitting); len(agreeing) == 1 && (len(fitting) == 1 || c.translated()) {
		return
	}
	meant := c.named(fitting, f.Title)
	if byAll := c.named(all, f.Title); len(byAll) == 1 && !byAll[0].fits {
		meant = byAll
	}
	switch {
	case len(meant) == 0 && len(fitting) > 1:
		meant = fitting
	case len(meant) == 0:
		meant = all // the number may be right, and of another kind
	}
	if len(ofKind(meant)) > 1 && len(fitting) > 1 {
		c.which(f, ofKind(meant))
	} else if near := nearest(meant); !near.agrees {
		c.disagree(f, near)
	}
}

// record says what to write in sources.yaml for the first figure of a source. A work that the calculations know has no
// entry there yet.
func record(f *markdown.Figure, source config.Reference) string {
	if source.Listed {
		return fmt.Sprintf("add \"figures:\" to %s in sources.yaml, and below it a line such as \"%s: what it is of\"",
			f.Target, f.Text)
	}
	return fmt.Sprintf("write it in content/sources.yaml:\n%s:\n  figures:\n    %s: what it is of", f.Target, f.Text)
}

// figureOf is what a figure of a source is of, in its first language and in that of the page.
func (c *figureCheck) figureOf(f *config.SourceFigure) string {
	return strings.TrimSuffix(f.For+"; "+f.Says(c.page.Language), "; ")
}

// named gives the figures of a source that a title shares most words with. Small words, numbers and units count only
// where two figures share as many of the others. There is none when it shares none.
func (c *figureCheck) named(compared []against, title string) []against {
	topic, all := c.wordsOf(title), everyWord(title)
	most := 0
	var found []against
	for _, a := range compared {
		of := c.figureOf(a.figure)
		n := 100*topic.shared(c.wordsOf(of)) + all.shared(everyWord(of))
		if n > most {
			found, most = nil, n
		}
		if n == most && n > 0 {
			found = append(found, a)
		}
	}
	return found
}

// everyWord gives the words of a text, small ones and numbers too.
func everyWord(text string) topic {
	found := topic{}
	for _, w := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	}) {
		found[w] = true
	}
	return found
}

// compareAll compares a figure with figures of its source.
func (c *figureCheck) compareAll(f *markdown.Figure, rest string, figures []config.SourceFigure) []against {
	var compared []against
	read := c.readSourced(f.Text, rest)
	for i := range figures {
		a := compare(read(figures[i].Range.Unit), &figures[i])
		if a.agrees {
			a = c.inMargin(f, a)
		}
		compared = append(compared, a)
	}
	return compared
}

// ofKind gives those of the same kind.
func ofKind(compared []against) []against {
	var fitting []against
	for _, a := range compared {
		if a.fits {
			fitting = append(fitting, a)
		}
	}
	return fitting
}

func agreeingOf(compared []against) []against {
	return slices.DeleteFunc(slices.Clone(compared), func(a against) bool { return !a.agrees })
}

// translated says whether the page is in another language than the site's main one, in which its sources are written.
func (c *figureCheck) translated() bool {
	languages := c.site.Config.Languages
	return len(languages) > 1 && prose.For(c.page.Language) != prose.For(languages[0])
}

func nearest(compared []against) against {
	return slices.MinFunc(compared, func(a, b against) int {
		return cmp.Or(cmp.Compare(rank(a.agrees), rank(b.agrees)), cmp.Compare(a.apart, b.apart))
	})
}

// which reports a figure that could be one of several of its source.
func (c *figureCheck) which(f *markdown.Figure, fitting []against) {
	var list []string
	for _, a := range fitting {
		list = append(list, fmt.Sprintf("%s, %s", a.figure.Range, a.figure.For))
	}
	note := "say which it is, with the words of sources.yaml"
	if near := nearest(fitting); near.agrees {
		note += fmt.Sprintf(", as in [%s]%s", f.Text, sourceLink(f.Target, near.figure))
	}
	c.fault("figure-source-which", f.TextSpan, fmt.Sprintf("source %q gives %d figures of this kind, and this "+
		"does not say which it is: %s", f.Target, len(list), strings.Join(list, "; ")), note)
}

// inMargin compares a figure that agrees with the words in the margin: "of urea" belongs to it as well.
func (c *figureCheck) inMargin(f *markdown.Figure, agreeing against) against {
	whole, wrong := c.language.OtherUnit(f.Text, " "+f.Title, agreeing.figure.Range.Unit)
	if !wrong {
		return agreeing
	}
	// But for those words it is the one that is meant.
	return against{figure: agreeing.figure, text: whole, apart: 0}
}

// readSourced reads the text of a sourced figure, in any unit that is wanted. What states no number fits nothing.
func (c *figureCheck) readSourced(text, rest string) func(wanted unit.Unit) prose.Figure {
	if r, err := c.language.Reading(text, rest); err == nil {
		return r.In
	}
	return func(wanted unit.Unit) prose.Figure {
		f, err := c.language.ReadFirst(text, rest, wanted)
		if err != nil {
			return prose.Figure{Text: text}
		}
		return f
	}
}

// counts says whether a text states a number: it begins with one, or an amount is in it, maybe with the words
// after it for a unit.
func (c *figureCheck) counts(text, rest string) bool {
	if !strings.ContainsAny(text, "0123456789") {
		found := c.language.Find(text + rest)
		return len(found) > 0 && found[0].Start < len(text)
	}
	_, err := c.language.ReadFigure(text, "", unit.Unit{})
	return err == nil || c.language.StartsWithNumber(text) || len(c.language.Find(text)) > 0
}

// against is a figure of the prose beside a figure of its source.
type against struct {
	figure *config.SourceFigure
	text   string     // of the prose
	gives  unit.Range // what the source gives, in the unit of the prose when it can be
	fits   bool       // the units measure the same
	agrees bool
	apart  float64 // how far the two are from each other, to find the nearest
}

// compare compares what was read with one figure of a source.
func compare(f prose.Figure, figure *config.SourceFigure) against {
	a := against{figure: figure, text: f.Text, fits: f.Fits, apart: math.MaxFloat64}
	if !f.Fits {
		switch bare := f.Unit.Dimension().Bare() == figure.Range.Unit.Dimension().Bare(); {
		case f.Low == figure.Range.Low && f.High == figure.Range.High:
			a.apart = quiteNear // the numbers are the same, so this one is meant, unless another is nearly right
		case bare:
			a.apart = 2 + prose.RelativeDifference(f.Low, figure.Range.Low) // a pound of something else
		}
		return a
	}
	back := f.By.Inverse()
	a.gives = unit.Range{Low: back.Apply(figure.Range.Low), High: back.Apply(figure.Range.High), Unit: f.Unit}
	a.agrees = f.AgreesClosely(a.gives.Low, a.gives.High)
	a.apart = prose.RelativeDifference(f.Low, a.gives.Low) + prose.RelativeDifference(f.High, a.gives.High)
	return a
}

// quiteNear is how far off a figure of the right unit may be, at both its ends, and still be nearer than one of the
// right number alone.
const quiteNear = 0.5

// disagree reports a figure that its source does not give.
func (c *figureCheck) disagree(f *markdown.Figure, near against) {
	add := fmt.Sprintf("add a line for it below its \"figures:\" in sources.yaml, such as \"%s: what it is of\"",
		unit.PointDecimals(near.text))
	line := fmt.Sprintf("if the source gives %s too, %s", near.text, add)
	if near.apart == math.MaxFloat64 {
		c.fault("figure-source-unit", f.TextSpan,
			fmt.Sprintf("the prose says %s, and source %q records no figure of that kind", near.text, f.Target), line)
		return
	}
	gives := fmt.Sprintf("the prose says %s, source %q gives %s, %s", near.text, f.Target, near.figure.Range,
		near.figure.For)
	switch {
	case !near.fits && near.text != f.Text:
		c.fault("figure-source-unit", f.TextSpan, gives,
			fmt.Sprintf("%s; if not, write %s in place of %s", line, near.figure.Range, near.text))
	case !near.fits:
		c.fault("figure-source-unit", f.TextSpan, gives,
			fmt.Sprintf("%s; if you mean %s, write that, or the same in another unit", line, near.figure.Range))
	default:
		c.fault("figure-source-differs", f.TextSpan, gives, fmt.Sprintf("write %s; %s", near.gives, line))
	}
}
