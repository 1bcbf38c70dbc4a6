package proof

import (
	"fmt"
	"math"
	"strings"

	"acreleaf/calc/said"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// sourced holds a sourced figure against the figures that its source gives. A link to a source without a number is a
// citation.
func (c *figureCheck) sourced(f *markdown.Figure, rest string) {
	source, known := c.site.Sources[f.Target]
	if !known {
		return // the join reports it
	}
	if len(source.Figures) == 0 {
		if !c.counts(f.Text, rest) {
			return
		}
		c.fault("figure-unrecorded", f.TextSpan,
			fmt.Sprintf("the prose says %s, and source %q records no figures to hold it against", f.Text, f.Target),
			fmt.Sprintf("add \"figures:\" to %s in sources.yaml, and below it a line such as \"%s: what it is of\"",
				f.Target, f.Text))
		return
	}
	var near against
	var read said.Figure
	for i := range source.Figures {
		figure := &source.Figures[i]
		if i == 0 || figure.Range.Unit.String() != source.Figures[i-1].Range.Unit.String() {
			read = readSourced(f.Text, rest, figure.Range.Unit)
		}
		a := hold(read, figure)
		if a.agrees {
			a = c.inMargin(f, a)
		}
		if a.agrees {
			return
		}
		if i == 0 || a.apart < near.apart {
			near = a
		}
	}
	if c.counts(f.Text, rest) {
		c.disagree(f, near)
	}
}

// inMargin holds a figure that agrees against the words that stand in the margin: "of urea" belongs to it as well.
func (c *figureCheck) inMargin(f *markdown.Figure, agreeing against) against {
	whole, wrong := said.Contradicts(f.Text, " "+f.Title, agreeing.figure.Range.Unit)
	if !wrong {
		return agreeing
	}
	// But for those words it is the one that is meant.
	return against{figure: agreeing.figure, said: whole, apart: 0}
}

// readSourced reads the text of a sourced figure. What states no number fits nothing.
func readSourced(text, rest string, wanted unit.Unit) said.Figure {
	f, err := said.ReadFigure(text, rest, wanted)
	if err != nil {
		f, err = said.ReadPart(text, rest, wanted)
	}
	if err != nil {
		return said.Figure{Said: text}
	}
	return f
}

// counts says whether a text states a number: it begins with one, or an amount stands in it, maybe with the words
// behind it for a unit.
func (c *figureCheck) counts(text, rest string) bool {
	if !strings.ContainsAny(text, "0123456789") {
		found := c.language.Find(text + rest)
		return len(found) > 0 && found[0].Start < len(text)
	}
	_, err := said.ReadFigure(text, "", unit.Unit{})
	return err == nil || said.Begins(text) || len(c.language.Find(text)) > 0
}

// against is a figure of the prose beside a figure of its source.
type against struct {
	figure *config.SourceFigure
	said   string     // what the prose says
	gives  unit.Range // what the source gives, in the unit of the prose when it can be
	fits   bool       // the units measure the same
	agrees bool
	apart  float64 // how far the two are from each other, to find the nearest
}

// hold holds what was read against one figure of a source.
func hold(f said.Figure, figure *config.SourceFigure) against {
	a := against{figure: figure, said: f.Said, fits: f.Fits, apart: math.MaxFloat64}
	if !f.Fits {
		if f.Low == figure.Range.Low && f.High == figure.Range.High {
			a.apart = quiteNear // the numbers are the same, so this one is meant, unless another is nearly right
		}
		return a
	}
	back := f.By.Inverse()
	a.gives = unit.Range{Low: back.Apply(figure.Range.Low), High: back.Apply(figure.Range.High), Unit: f.Unit}
	a.agrees = f.Quotes(a.gives.Low, a.gives.High)
	a.apart = said.Apart(f.Low, a.gives.Low) + said.Apart(f.High, a.gives.High)
	return a
}

// quiteNear is how far off a figure of the right unit may be, at both its ends, and still be nearer than one of the
// right number alone.
const quiteNear = 0.5

// disagree reports a figure that its source does not give.
func (c *figureCheck) disagree(f *markdown.Figure, near against) {
	gives := fmt.Sprintf("the prose says %s, source %q gives %s", near.said, f.Target, near.figure.Range)
	if !near.fits {
		note := fmt.Sprintf("write %s, or a figure in another unit of the same kind", near.figure.Range)
		if near.said != f.Text {
			note = fmt.Sprintf("write %s in place of %s", near.figure.Range, near.said)
		}
		c.fault("figure-source-unit", f.TextSpan, gives, note)
		return
	}
	c.fault("figure-source-differs", f.TextSpan, gives,
		fmt.Sprintf("write %s; if the source gives %s too, add it to the source's figures in sources.yaml",
			near.gives, near.said))
}
