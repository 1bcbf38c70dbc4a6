package markdown

import (
	"regexp"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
)

const proseText = "# Heading *one* of [two](worked:a.b)\n\nFirst **line** with `code` and\n> no quote\n\n" +
	"> quoted *text*\n> of two lines\n\n- item [link *text*](other.md) end\n- ![a picture](block.svg) beside\n\n" +
	"caption of all\n\n| head | second |\n| --- | --- |\n" +
	"| cell \\| more | [4 lb](source:x) each |\n\nTerm\n: Meaning of it[^n]\n\n" +
	"[^n]: The footnote.\n\n```worksheet soil\ncalculation: soil-nitrogen\n```\n\n" +
	"    listing\n\n<https://example.org> stands\n"

func proseOf(t *testing.T, text string) (all []string, doc *Document) {
	t.Helper()
	doc, _ = Parse(&message.Source{Name: "a.md", Text: []byte(text)}, 0)
	words := regexp.MustCompile(`[a-zA-Z]+`)
	doc.Prose(func(p *Prose) {
		all = append(all, strings.ReplaceAll(strings.ReplaceAll(p.Text, Stand, "@"), "\n", "/"))
		for _, at := range words.FindAllStringIndex(p.Text, -1) {
			span := p.Span(at[0], at[1])
			if got := string(doc.Source.Text[span.Start:span.End]); got != p.Text[at[0]:at[1]] {
				t.Errorf("%q of %q stands at %q", p.Text[at[0]:at[1]], p.Text, got)
			}
		}
		for _, f := range p.Figures {
			if p.Span(f.At, f.At+len(Stand)).Start != f.Span.Start {
				t.Errorf("the figure %q of %q is said to be elsewhere", f.Text, p.Text)
			}
		}
		for _, l := range p.Links {
			if p.Text[l.Start:l.End] != "link text" {
				t.Errorf("a link with the text %q", p.Text[l.Start:l.End])
			}
		}
	})
	return all, doc
}

func TestProse(t *testing.T) {
	want := []string{
		"Heading one of @", "First line with @ and", "code", "no quote", "quoted text/of two lines", "item link text end",
		" beside", "a picture", "caption of all", "head", "second", "cell | more", "@ each", "Term", "Meaning of it",
		"listing/", "@ stands", "The footnote.",
	}
	for _, ends := range []string{"\n", "\r\n"} {
		all, _ := proseOf(t, strings.ReplaceAll(proseText, "\n", ends))
		if strings.Join(all, "; ") != strings.Join(want, "; ") {
			t.Errorf("with line ends %q:\n got %q\nwant %q", ends, all, want)
		}
	}
}

// What readers see is prose, HTML and listings too; comments and titles of figures are none of it.
func TestProseOfAsides(t *testing.T) {
	all, _ := proseOf(t, "A <b>tag</b> and<!-- no --> [link *text*](a.md \"first &amp; last\") `b`\n\n"+
		"<div>in <!-- not\nseen --> it\n</div>\n\n<!-- none -->\n\n<!-->seen\n\n```\nbare\n```\n\n```text\ntyped\n```\n")
	want := []string{"A <b>tag</b> and link text @", "first & last", "b", "<div>in  it/</div>/", "/", "seen/", "bare/"}
	if strings.Join(all, "; ") != strings.Join(want, "; ") {
		t.Errorf("\n got %q\nwant %q", all, want)
	}
}

// A document at rest has the same prose.
func TestProseAtRest(t *testing.T) {
	before, doc := proseOf(t, proseText)
	doc.Rest()
	count := 0
	doc.Prose(func(p *Prose) { count++ })
	if count != len(before) {
		t.Errorf("%d pieces of prose before, %d at rest", len(before), count)
	}
}

func TestProseKeepsPlacesAroundWhatIsResolved(t *testing.T) {
	const text = "Use 48&nbsp;lb, 5\\% and **6** *in*\nnow"
	doc, _ := Parse(&message.Source{Name: "a.md", Text: []byte("\n" + text)}, 0)
	doc.Prose(func(p *Prose) {
		for _, c := range []struct{ said, written string }{
			{"48\u00A0lb", "48&nbsp;lb"}, {"5%", `5\%`}, {"6 in", "6** *in"}, {"in\nnow", "in*\nnow"}, {"Use", "Use"},
		} {
			at := strings.Index(p.Text, c.said)
			if at < 0 {
				t.Fatalf("%q is not in %q", c.said, p.Text)
			}
			span := p.Span(at, at+len(c.said))
			if got := string(doc.Source.Text[span.Start:span.End]); got != c.written {
				t.Errorf("%q stands at %q", c.said, got)
			}
		}
	})
}
