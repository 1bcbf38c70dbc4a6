package handout

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"html"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"acreleaf/calc/practice"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

const (
	testAddress = "https://guides.example.org/walnuts/"
	most        = 200 // cards of an exercise
)

// watched is the edition of a handout that keeps the exercises of its page.
type watched struct {
	book.Edition
	page string
	seen *[]*worksheet.Exercise
}

func (w *watched) Page(p *book.Page) ([]output.File, message.List) {
	if p.Name == w.page {
		*w.seen = p.Work.Exercises
	}
	return w.Edition.Page(p)
}

// printed makes the handout of a workshop, and gives the exercises that it is of.
func printed(t *testing.T, content fs.FS, o Options) (map[string]string, []*worksheet.Exercise) {
	t.Helper()
	var seen []*worksheet.Exercise
	made := New(o)
	files := make(chan output.File, 3)
	_, said := book.Make(book.Options{Content: content, Name: "content"}, func(s *book.Settings) book.Edition {
		return &watched{made(s), o.Page, &seen}
	}, func(f output.File) error { files <- f; return nil })
	if message.HasFault(said) {
		t.Fatalf("%+v", said)
	}
	close(files)
	byName := map[string]string{}
	for f := range files {
		byName[f.Path] = string(f.Bytes)
	}
	return byName, seen
}

var cardsLine = regexp.MustCompile(`(?m)^cards: .*\n`)

// demo is the content of the demo, with an address, and with as many cards of each exercise as there are up to most.
func demo(t *testing.T) fs.FS {
	content := fstest.MapFS{}
	root := os.DirFS(filepath.Join("..", "..", "..", "..", "..", "content"))
	err := fs.WalkDir(root, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := fs.ReadFile(root, name)
		switch {
		case name == "site.yaml":
			text = append(text, "address: "+testAddress+"\n"...)
		case strings.HasPrefix(name, "workshops/"):
			text = cardsLine.ReplaceAll(text, nil)
		}
		content[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	_, seen := printed(t, content, Options{Page: "workshops/report.md", Last: 1, PerSide: 4, Paper: Letter})
	for _, e := range seen {
		fence := "```exercise " + e.Block.Name + "\n"
		for _, name := range []string{"workshops/report.md", "workshops/informe.md"} { // a translation has as many
			page := content[name]
			page.Data = bytes.Replace(page.Data, []byte(fence),
				fmt.Appendf(nil, "%scards: %d\n", fence, min(most, e.Practice.Distinct())), 1)
		}
	}
	return content
}

// On the cards and in the key is what practice says of each card.
func TestCardsAndKeyOfTheDemo(t *testing.T) {
	content := demo(t)
	for _, o := range []Options{{PerSide: 4, Paper: Letter}, {PerSide: 2, Paper: A4}} {
		o.Page = "workshops/report.md"
		files, exercises := printed(t, content, o)
		if len(exercises) < 2 {
			t.Fatalf("%d exercises", len(exercises))
		}
		cards := cardsIn(t, files[CardsFile])
		key, steps := keyIn(t, files[KeyFile]), stepsIn(t, files[KeyFile])
		total, empty, never := 0, 0, 0
		for i, e := range exercises {
			set, err := practice.NewSet(e.Practice, "en")
			if err != nil {
				t.Fatal(err)
			}
			made := madeOnACard(t, e, set)
			for number := 1; number <= e.Cards; number++ {
				card, err := set.Card(number)
				if err != nil {
					t.Fatal(err)
				}
				row := wantedRow(t, e, card, made)
				same(t, "card", cards[total], wantedCard(e, card))
				same(t, "key of "+e.Title, key[i][number-1], row)
				same(t, "steps of "+e.Title, steps[i][number], wantedSteps(set, card))
				if slices.Contains(row, "") {
					empty++
				}
				total++
			}
			same(t, "slips", slipsIn(files[KeyFile])[i], wantedSlips(set, made))
			for _, p := range set.Parts {
				never += len(p.Slips())
			}
			never -= len(made)
		}
		if len(cards) != total {
			t.Errorf("%d cards, want %d", len(cards), total)
		}
		if empty == 0 || never == 0 {
			t.Errorf("%d cards have slips that nobody can make there, and %d slips nobody can make on any", empty, never)
		}
	}
}

func same(t *testing.T, what string, got, want []string) {
	t.Helper()
	if !slices.Equal(got, want) {
		t.Fatalf("%s:\n got %q\nwant %q", what, got, want)
	}
}

// wantedCard is all that a card must say, in order.
func wantedCard(e *worksheet.Exercise, card *practice.Card) []string {
	story := ""
	for _, piece := range e.Story {
		if story += piece.Text; piece.Given != "" {
			story += card.Given(piece.Use, piece.Given)
		}
	}
	want := []string{fmt.Sprint("Card ", card.Number), e.Title, story,
		fmt.Sprintf("%sworkshops/report/#card-%s-%d", testAddress, e.Block.Name, card.Number)}
	for _, line := range e.Practice.Report {
		want = append(want, line.Label+card.LineText(line))
	}
	for i, p := range card.Parts() {
		digits := fmt.Sprintf("to %d digits", p.Digits)
		if p.Digits == 1 {
			digits = "to one digit"
		}
		ask := p.Label() + ", " + digits
		if p.Choice != nil {
			ask = p.Label()
		}
		if len(card.Parts()) > 1 {
			ask = fmt.Sprintf("%d. %s", i+1, ask)
		}
		want = append(want, ask)
		if p.Choice != nil {
			want = append(want, card.Texts(p.Choice)...)
		}
	}
	return want
}

// slipsOn are the slips that somebody can make to a part of a card, by name, and what they give.
func slipsOn(e *worksheet.Exercise, card *practice.Card, p *practice.Part) map[string]float64 {
	if p.Choice != nil {
		return nil
	}
	use := slices.IndexFunc(e.Practice.Uses, func(u *practice.Use) bool { return u.Name == p.Use })
	o, on := card.Outcome(use), map[string]float64{}
	for _, slip := range o.Slips() {
		if slip.Answer == p.Result {
			on[slip.Name] = o.Slip(slip)
		}
	}
	return on
}

// madeOnACard are the slips that somebody can make on a card of an exercise, by use and name.
func madeOnACard(t *testing.T, e *worksheet.Exercise, set *practice.Set) map[string]bool {
	made := map[string]bool{}
	for number := 1; number <= e.Cards; number++ {
		card, err := set.Card(number)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range set.Parts {
			for slip := range slipsOn(e, card, p) {
				made[p.Use+" "+slip] = true
			}
		}
	}
	return made
}

// wantedRow is a row of the key: what is given, and of each part the answer with its unit and what each slip gives, a
// dash where that is the right answer, and nothing where nobody can make the slip.
func wantedRow(t *testing.T, e *worksheet.Exercise, card *practice.Card, made map[string]bool) []string {
	want := []string{strconv.Itoa(card.Number)}
	for _, u := range e.Practice.Uses {
		for _, v := range u.Varied {
			want = append(want, card.Given(u.Name, v.Given))
		}
	}
	for _, p := range card.Parts() {
		want = append(want, card.Key(p))
		right, on := card.Answer(p).Value, slipsOn(e, card, p)
		for _, slip := range p.Slips() {
			value, can := on[slip.Name]
			gives := unit.Digits(value, p.Digits, 0)
			switch {
			case !made[p.Use+" "+slip.Name]:
				continue
			case !can:
				gives = ""
			case !slices.ContainsFunc(card.SlipKeys(p), func(k practice.SlipKey) bool { return k.Slip == slip }):
				gives = "–"
				if off := math.Abs(value/right - 1); off > math.Pow(10, float64(1-p.Digits))/2*1.001 {
					t.Errorf("card %d: %s gives %v, and %v is right", card.Number, slip.Name, value, right)
				}
			}
			want = append(want, gives)
		}
	}
	return want
}

// wantedSteps are the steps on the way of a card, each with its label, the right number and its unit.
func wantedSteps(set *practice.Set, card *practice.Card) []string {
	var want []string
	for _, p := range set.Steps {
		if !slices.Contains(set.Parts, p) {
			want = append(want, p.Label()+": "+card.Key(p))
		}
	}
	return want
}

func wantedSlips(set *practice.Set, made map[string]bool) []string {
	var want []string
	for _, p := range set.Parts {
		first := true
		for _, slip := range p.Slips() {
			text := slip.Text
			if !made[p.Use+" "+slip.Name] {
				continue
			}
			if first && len(set.Parts) > 1 {
				text = p.Label() + ": " + text
			}
			want, first = append(want, text), false
		}
	}
	return want
}

// reaching finds what would run, fetch or set a style beside that of the page.
var reaching = regexp.MustCompile(`^<(script|link|iframe|object)|\s(src|style|on[a-z]+)=|url\(`)

// A page of a handout runs nothing, fetches nothing, and allows its own style alone.
func TestAPageNeedsNothingElse(t *testing.T) {
	files, _ := printed(t, demo(t), Options{Page: "workshops/report.md", Last: 2, PerSide: 4, Paper: A4})
	if len(files) != 3 {
		t.Errorf("%d files", len(files))
	}
	for name, page := range files {
		style := between(page, "<style>", "</style>")
		sum := sha256.Sum256([]byte(style))
		policy := "default-src 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
		if len(style) < 1000 || !strings.Contains(html.UnescapeString(page), policy) {
			t.Errorf("%s: its policy does not allow its style of %d bytes", name, len(style))
		}
		for _, tag := range tags.FindAllString(page, -1) {
			if reaching.MatchString(tag) {
				t.Errorf("%s has %s", name, tag)
			}
		}
	}
}

// A card has room for the work: what has long text is one of fewer on a side.
func TestFewerLongCardsOnASide(t *testing.T) {
	for _, c := range []struct {
		letters, asks, asked, want int
	}{
		{150, 1, 4, 4}, {150, 1, 2, 2}, {200, 2, 4, 4}, {270, 3, 4, 2}, {700, 1, 4, 2}, {700, 1, 2, 2}, {2000, 1, 4, 1},
		{100, 8, 4, 1},
	} {
		v := &render.HandedExercise{Asks: make([]render.HandedAsk, c.asks), Cards: []render.HandedCard{
			{}, {Story: []render.StoryPiece{{Text: strings.Repeat("ñ", c.letters)}}},
		}}
		if got := perSide(v, c.asked); got != c.want {
			t.Errorf("%+v: %d", c, got)
		}
	}
	report := &render.HandedExercise{Asks: make([]render.HandedAsk, 1),
		Cards: []render.HandedCard{{Report: make([]render.ReportLine, 6),
			Story: []render.StoryPiece{{Text: strings.Repeat("a", 80)}}}}}
	if got := perSide(report, 4); got != 2 {
		t.Errorf("a card with a report is one of %d on a side", got)
	}
}
