// Command marks answers the exercises of a content folder in many ways, and writes each mark: a JSON object
// with a list of pages. The browser check "marking" puts the same answers into the pages.
//
// It must not mark anything by other means than package practice.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"sync"

	"acreleaf/calc/practice"
	"acreleaf/calc/words"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

// steppedCards is on how many cards each step is answered right, from card 1 on.
const steppedCards = 50

func main() {
	from := flag.String("from", "content", "the content folder")
	count := flag.Int("answers", 20_000, "how many random answers")
	seed := flag.Uint64("seed", 1, "of the random answers")
	flag.Parse()
	pages, err := collect(*from)
	if err == nil {
		r := rand.New(rand.NewPCG(*seed, 1))
		err = answerAll(pages, *count, r)
	}
	if err == nil {
		err = json.NewEncoder(os.Stdout).Encode(pages)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "marks:", err)
		os.Exit(1)
	}
}

// A Page is one with exercises.
type Page struct {
	Path      string      `json:"path"`
	Exercises []*Exercise `json:"exercises"`

	language string
}

// An Exercise is what was answered to one.
type Exercise struct {
	Name  string `json:"name"`
	Cases []Case `json:"cases"`

	cards    int
	practice *practice.Exercise
}

// A Case is answers to the steps of a card, and their marks. That to a choice is the number of an option, or the place
// of each item, with a hyphen for none.
type Case struct {
	Card  int       `json:"card"`
	Texts []*string `json:"texts"` // by step; nil for one that is not answered
	Said  []string  `json:"said"`  // the sentences, a line each
}

// A collector is an edition that only looks at exercises.
type collector struct {
	sync.Mutex
	pages []*Page
}

func (c *collector) Check(*book.Book) message.List                 { return nil }
func (c *collector) Common(*book.Book) ([]book.Part, message.List) { return nil, nil }
func (c *collector) Page(p *book.Page) ([]output.File, message.List) {
	page := &Page{Path: p.Address.String(), language: p.Language}
	for _, e := range p.Work.Exercises {
		page.Exercises = append(page.Exercises, &Exercise{Name: e.Block.Name, cards: e.Cards, practice: e.Practice})
	}
	c.Lock()
	defer c.Unlock()
	if len(page.Exercises) > 0 {
		c.pages = append(c.pages, page)
	}
	return nil, nil
}

func collect(from string) ([]*Page, error) {
	c := &collector{}
	put := func(output.File) error { return nil }
	edition := func(*book.Settings) book.Edition { return c }
	_, messages := book.Make(book.Options{Content: os.DirFS(from), Name: from}, edition, put)
	if message.HasFault(messages) {
		return nil, fmt.Errorf("%s has faults: run acreleaf proof", from)
	}
	slices.SortFunc(c.pages, func(a, b *Page) int { return strings.Compare(a.Path, b.Path) })
	return c.pages, nil
}

func answerAll(pages []*Page, count int, r *rand.Rand) error {
	exercises := 0
	for _, p := range pages {
		exercises += len(p.Exercises)
	}
	if exercises == 0 {
		return fmt.Errorf("there is no exercise")
	}
	for _, p := range pages {
		for _, e := range p.Exercises {
			set, err := practice.NewSet(e.practice, p.language)
			if err != nil {
				return err
			}
			a := &answerer{set: set, language: p.language, r: r, made: e}
			if err := a.answer((count + exercises - 1) / exercises); err != nil {
				return err
			}
		}
	}
	return nil
}

// An answerer answers one exercise.
type answerer struct {
	set      *practice.Set
	language string
	r        *rand.Rand
	made     *Exercise
}

// answer answers each step right on the first cards, and then at random, a few times a card.
func (a *answerer) answer(count int) error {
	for number := 1; number <= min(steppedCards, a.made.cards); number++ {
		card, err := a.set.Card(number)
		if err != nil {
			return err
		}
		texts := make([]*string, len(a.set.Steps))
		for i, p := range a.set.Steps {
			key := card.Key(p)
			if p.Choice != nil {
				key = chosen(card.Answer(p).Value)
			}
			texts[i] = &key
		}
		if err := a.add(card, texts); err != nil {
			return err
		}
		right, _, _ := strings.Cut(words.OfPractice(a.language).Right, "{")
		said := a.made.Cases[len(a.made.Cases)-1].Said
		for _, one := range said {
			if !strings.HasPrefix(one, right) {
				return fmt.Errorf("%s, card %d: the keys are marked %q", a.made.Name, number, said)
			}
		}
	}
	const aCard = 20
	for done := 0; done < count; {
		card, err := a.set.Card(1 + a.r.IntN(a.made.cards))
		if err != nil {
			return err
		}
		for range aCard {
			texts := make([]*string, len(a.set.Steps))
			for i, p := range a.set.Steps {
				if len(texts) == 1 || a.r.IntN(len(texts)) < 2 {
					text := a.text(card, p)
					texts[i] = &text
					done++
				}
			}
			if err := a.add(card, texts); err != nil {
				return err
			}
		}
	}
	return nil
}

// add marks a case, as a page does: a text that cannot be read is no answer, and has a sentence of its own.
func (a *answerer) add(card *practice.Card, texts []*string) error {
	c := Case{Card: card.Number, Texts: texts, Said: make([]string, len(texts))}
	heard := make([]practice.Heard, len(texts))
	for i, text := range texts {
		if text == nil {
			continue
		}
		var err error
		if heard[i], err = a.set.Steps[i].Read(*text, a.language); err != nil {
			c.Said[i] = err.Error()
		} else if !heard[i].Given {
			c.Said[i] = a.set.Steps[i].Unread(a.language)
		}
	}
	for i, mark := range card.MarkSteps(heard) {
		if heard[i].Given {
			c.Said[i] = strings.Join(card.Say(a.set.Steps[i], mark, a.language), "\n")
		}
	}
	a.made.Cases = append(a.made.Cases, c)
	return nil
}
