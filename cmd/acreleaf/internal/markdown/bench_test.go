package markdown

import (
	"bytes"
	"os"
	"slices"
	"testing"
	"time"

	"github.com/yuin/goldmark"

	"acreleaf/cmd/acreleaf/internal/message"
)

// guide gives a page like those that growers read: guide.md has none of our blocks, guide-blocks.md has five.
func guide(tb testing.TB, name string) []byte {
	b, err := os.ReadFile("testdata/" + name)
	if err != nil {
		tb.Fatal(err)
	}
	return b
}

// BenchmarkPage reads and prints a page, and prints how long that takes next to goldmark as it comes on the same text.
func BenchmarkPage(b *testing.B) {
	for _, name := range []string{"guide.md", "guide-blocks.md"} {
		b.Run(name, func(b *testing.B) {
			page := guide(b, name)
			ours, bare := oursOn(b, page), bareOn(b, page)
			var spentOurs, spentBare []time.Duration
			b.ReportAllocs()
			for b.Loop() { // in turn, so that both meet the same weather
				start := time.Now()
				ours()
				middle := time.Now()
				bare()
				spentOurs = append(spentOurs, middle.Sub(start))
				spentBare = append(spentBare, time.Since(middle))
			}
			b.ReportMetric(float64(quick(spentOurs))/float64(quick(spentBare)), "ratio")
			b.ReportMetric(float64(quick(spentOurs)), "ours-ns/op")
		})
	}
}

// quick is the time that one run in ten beats: what the work takes when nothing else runs in between.
func quick(spent []time.Duration) time.Duration {
	slices.Sort(spent)
	return spent[len(spent)/10]
}

// oursOn reads and prints a page.
func oursOn(tb testing.TB, page []byte) func() {
	src := &message.Source{Name: "page.md", Text: page}
	var w bytes.Buffer
	return func() {
		w.Reset()
		doc, _ := Parse(src, 0)
		if err := doc.HTML(&w, leanFragments{}, &testWords); err != nil {
			tb.Fatal(err)
		}
	}
}

// bareOn converts a page with goldmark as it comes.
func bareOn(tb testing.TB, page []byte) func() {
	md := goldmark.New()
	var w bytes.Buffer
	return func() {
		w.Reset()
		if err := md.Convert(page, &w); err != nil {
			tb.Fatal(err)
		}
	}
}

// leanFragments stands for the packages above and costs almost nothing, because what they cost is not measured here.
type leanFragments struct{}

func (leanFragments) Block(w *bytes.Buffer, b *Block) { w.WriteString(b.Name) }
func (leanFragments) Passage(_ *bytes.Buffer, p *Passage, text func(int)) {
	for i := range p.Cases {
		text(i)
	}
}
func (leanFragments) Figure(w *bytes.Buffer, f *Figure) { w.WriteString(f.Text) }
func (leanFragments) Link(l *Link) string               { return l.Destination }
func (leanFragments) Size(*Link) (width, height int)    { return 0, 0 }
func (leanFragments) Notes(*bytes.Buffer)               {}
