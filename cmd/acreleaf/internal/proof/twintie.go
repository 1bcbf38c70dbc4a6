package proof

import (
	"fmt"
	"strings"

	"acreleaf/calc/prose"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

// tied compares the figures of a translation that are tied to a source, a record or a size with those of the original:
// a figure that only one of the two has is told beside one that only the other has.
func (t *translation) tied() {
	ours, theirs := tiedFigures(t.page), tiedFigures(t.original)
	for _, to := range theirs.order {
		own, original := t.apart(ours.figures[to], theirs.figures[to])
		for i, f := range own {
			if i == len(original) {
				break
			}
			t.fault(f.TextSpan, "translation-differs",
				fmt.Sprintf("the translation says %s, and the original %s (%s)", f.Text, original[i].Text,
					t.at(original[i].Span.Start)), "write "+original[i].Text+" here, or correct the original")
		}
		for _, f := range original[min(len(own), len(original)):] {
			if to.scheme != construct.Sized {
				t.lacks(fmt.Sprintf("the original says %s after %s (%s), and this translation does not", f.Text, to,
					t.at(f.Span.Start)), "add it, or take it out of the original")
			}
		}
	}
}

// tieTo is what a figure is tied to.
type tieTo struct {
	scheme construct.Scheme
	target string
}

func (t tieTo) String() string {
	if t.scheme == construct.Recorded {
		return "the record of " + t.target
	}
	return fmt.Sprintf("%s %q", t.scheme, t.target)
}

// tiedBy are the figures of a page by what they are tied to, in the order of the text.
type tiedBy struct {
	order   []tieTo
	figures map[tieTo][]*markdown.Figure
}

func tiedFigures(p *Page) tiedBy {
	tied, language := tiedBy{figures: map[tieTo][]*markdown.Figure{}}, prose.For(p.Language)
	for _, f := range p.Document.Figures {
		if f.Scheme == construct.Worked || !strings.ContainsAny(f.Text, "0123456789") && len(language.Find(f.Text)) == 0 {
			continue // a citation
		}
		to := tieTo{f.Scheme, f.Target}
		if tied.figures[to] == nil {
			tied.order = append(tied.order, to)
		}
		tied.figures[to] = append(tied.figures[to], f)
	}
	return tied
}

// apart takes out of two lists the figures that say the same.
func (t *translation) apart(a, b []*markdown.Figure) (onlyA, onlyB []*markdown.Figure) {
	return without(a, b, func(f, other *markdown.Figure) bool { return t.sameFigure(f.Text, other.Text) })
}

// without takes out of two lists what is the same in both, each as often as it is in both.
func without[T any](a, b []T, same func(T, T) bool) (onlyA, onlyB []T) {
	taken := make([]bool, len(b))
	for _, one := range a {
		found := false
		for i, other := range b {
			if !taken[i] && same(one, other) {
				taken[i], found = true, true
				break
			}
		}
		if !found {
			onlyA = append(onlyA, one)
		}
	}
	for i, one := range b {
		if !taken[i] {
			onlyB = append(onlyB, one)
		}
	}
	return onlyA, onlyB
}

// sameFigure says whether two texts state one number: in the same digits, or in units of the same kind.
func (t *translation) sameFigure(ours, theirs string) bool {
	own, err := prose.For(t.page.Language).ReadFirst(ours, "", unit.Unit{})
	if err != nil {
		return digits(ours) == digits(theirs)
	}
	original, err := prose.For(t.original.Language).ReadFirst(theirs, "", own.Unit)
	if err != nil || !original.Fits {
		return digits(ours) == digits(theirs)
	}
	return own.Agrees(original.By.Apply(original.Low), original.By.Apply(original.High))
}

// digits are the numbers of a text, without its words.
func digits(text string) string {
	return strings.Join(strings.FieldsFunc(text, func(r rune) bool { return (r < '0' || r > '9') && r != '.' }), " ")
}
