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
	if !c.counts(f.Text) {
		return
	}
	if len(source.Figures) == 0 {
		c.fault("figure-unrecorded", f.TextSpan,
			fmt.Sprintf("the prose says %s, and source %q records no figures to hold it against", f.Text, f.Target),
			fmt.Sprintf("add \"figures:\" to %s in sources.yaml, and below it a line such as \"%s: what it is of\"",
				f.Target, f.Text))
		return
	}
	var near *against
	for i := range source.Figures {
		a := hold(f.Text, rest, &source.Figures[i])
		if a.agrees {
			return
		}
		if near == nil || a.apart < near.apart {
			near = a
		}
	}
	c.disagree(f, near)
}

// counts says whether a text states a number: it begins with one, or an amount stands in it.
func (c *figureCheck) counts(text string) bool {
	if strings.IndexAny(text, "0123456789") < 0 {
		return len(c.language.Find(text)) > 0
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

// hold holds a text against one figure of a source.
func hold(text, rest string, figure *config.SourceFigure) *against {
	a := &against{figure: figure, said: text, gives: figure.Range, apart: math.Inf(1)}
	f, err := said.ReadFigure(text, rest, figure.Range.Unit)
	if err != nil {
		f, err = said.ReadPart(text, rest, figure.Range.Unit)
	}
	if err != nil {
		return a
	}
	a.said, a.fits = f.Said, f.Fits
	if !f.Fits {
		a.apart = math.MaxFloat64
		return a
	}
	back := unit.Factor{Multiply: f.By.Divide, Divide: f.By.Multiply}
	a.gives = unit.Range{Low: back.Apply(a.gives.Low), High: back.Apply(a.gives.High), Unit: f.Unit}
	a.agrees = f.Agrees(a.gives.Low, a.gives.High)
	a.apart = distance(f.Low, a.gives.Low) + distance(f.High, a.gives.High)
	return a
}

// distance is how far two numbers are apart, as a share of the larger.
func distance(a, b float64) float64 {
	return math.Abs(a-b) / max(math.Abs(a), math.Abs(b), math.SmallestNonzeroFloat64)
}

// disagree reports a figure that its source does not give.
func (c *figureCheck) disagree(f *markdown.Figure, near *against) {
	gives := fmt.Sprintf("the prose says %s, source %q gives %s", near.said, f.Target, near.figure.Range)
	if !near.fits {
		c.fault("figure-source-unit", f.TextSpan, gives,
			fmt.Sprintf("write %s, or a figure in another unit of the same kind", near.figure.Range))
		return
	}
	c.fault("figure-source-differs", f.TextSpan, gives,
		fmt.Sprintf("write %s; if the source gives %s too, add it to the source's figures in sources.yaml",
			near.gives, near.said))
}
