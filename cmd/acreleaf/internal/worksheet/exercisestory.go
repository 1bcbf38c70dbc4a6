package worksheet

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/message"
)

// mention is a given in a story: {nitrate}, {soil.nitrate}.
var mention = regexp.MustCompile(`\{([^{}]*)\}`)

// digit finds a number that a story has in its own words.
var digit = regexp.MustCompile(`\d`)

// readStory reads the story: every given that has a number must be in it or in the report, and no other number.
func (r *exerciseReader) readStory() {
	entry, is := r.entries[keyStory]
	if !is {
		r.fault(r.block.Span, "exercise-story", "this exercise has no story, so a reader does not see what is given",
			"add a line such as: story: "+r.exampleStory())
		return
	}
	text, at := entry.Value, 0
	for _, place := range mention.FindAllStringSubmatchIndex(text, -1) {
		r.storyText(text[at:place[0]], at)
		r.storyGiven(text[place[2]:place[3]], place[0], place[1])
		at = place[1]
	}
	r.storyText(text[at:], at)
	for _, u := range r.made.Practice.Uses {
		for _, given := range u.Sheet.Givens {
			if r.unfit || !r.hasNumber(u, given) || r.mentions[r.called(u, given.Name)] {
				continue
			}
			where := "the story tells"
			if len(r.made.Practice.Report) > 0 {
				where = "the story or the report tells"
			}
			r.fault(entry.ValueSpan, "exercise-story", fmt.Sprintf("the story leaves out %q", r.called(u, given.Name)),
				fmt.Sprintf("put {%s} where %s it", r.called(u, given.Name), where))
		}
	}
}

// storySpan is the place of a part of the story, if the text in the file is the text that was read.
func (r *exerciseReader) storySpan(from, to int) message.Span {
	span := r.at(keyStory)
	if span.End-span.Start == len(r.entries[keyStory].Value) {
		return message.Span{Start: span.Start + from, End: span.Start + to}
	}
	return span
}

func (r *exerciseReader) storyText(text string, at int) {
	if text == "" {
		return
	}
	if place := digit.FindStringIndex(text); place != nil {
		r.fault(r.storySpan(at+place[0], at+place[1]), "exercise-story",
			"the story has a number of its own, and a card's numbers are in braces",
			"make it a given in braces, or write it in words")
	}
	r.made.Story = append(r.made.Story, practice.Piece{Text: text})
}

func (r *exerciseReader) storyGiven(name string, from, to int) {
	if piece, good := r.mentioned(name, r.storySpan(from, to), "exercise-story"); good {
		r.made.Story = append(r.made.Story, piece)
	}
}

// mentioned finds a given that a text has in braces.
func (r *exerciseReader) mentioned(name string, at message.Span, id string) (practice.Piece, bool) {
	u, given := r.split(strings.TrimSpace(name))
	if u == nil || u.Sheet.FindGiven(given) == nil || !r.hasNumber(u, u.Sheet.FindGiven(given)) {
		if !r.unfit {
			r.fault(at, id, fmt.Sprintf("no given of this exercise is called %q", name), write("", name, r.names(givenNames)))
		}
		return practice.Piece{}, false
	}
	r.mentions[r.called(u, given)] = true
	return practice.Piece{Use: u.Name, Given: given}, true
}

// hasNumber says whether a card tells a given: it is not taken from another calculation, and not left out.
func (r *exerciseReader) hasNumber(u *practice.Use, given *sheet.Given) bool {
	if _, written := r.entries[r.called(u, given.Name)]; !written {
		return false
	}
	_, linked := u.Links[given.Name]
	return !linked
}

func (r *exerciseReader) exampleStory() string {
	for _, u := range r.made.Practice.Uses {
		for _, given := range u.Sheet.Givens {
			if r.hasNumber(u, given) {
				return fmt.Sprintf("A report says {%s}.", r.called(u, given.Name))
			}
		}
	}
	return "A report says {nitrate}."
}

// checkCards deals every card that is asked for, so that none is printed without an answer.
func (r *exerciseReader) checkCards() bool {
	e := r.made
	if distinct := e.Practice.Distinct(); distinct < e.Cards {
		r.fault(r.at(keyCards), "exercise-cards", fmt.Sprintf("%d cards are asked for, and these numbers make %d", e.Cards,
			distinct), "let a given have more values, or ask for fewer cards: cards: "+fmt.Sprint(distinct))
		return false
	}
	set, err := practice.NewSet(e.Practice, r.tag)
	if err != nil {
		var circle *sheet.CircleError
		if errors.As(err, &circle) {
			r.fault(r.block.Span, "worksheet-circle", circle.Error(), "write a number in one of them")
			return false
		}
		r.fault(r.block.Span, "exercise-uses", err.Error(), "look at the calculations and what they take from each other")
		return false
	}
	swallowed := map[*sheet.Slip]int{}
	for number := 1; number <= e.Cards; number++ {
		card, err := set.Card(number)
		if err != nil {
			r.fault(r.block.Span, "exercise-refused", "a card has no answer: "+err.Error(),
				"change what the givens may be, so that every card has one")
			return false
		}
		for _, p := range set.Parts {
			if p.Choice != nil && !r.checkDecided(card, p) {
				return false
			}
			for _, slip := range card.Swallowed(p) {
				swallowed[slip]++
			}
		}
	}
	for _, p := range set.Parts {
		for _, slip := range p.Slips() {
			if swallowed[slip] == e.Cards && e.Cards > 1 {
				r.fault(r.at(keyDigits), "exercise-digits", fmt.Sprintf(
					"on every card the slip %s comes to the right answer when it is rounded to the digits asked for", slip.Name),
					"ask for more digits, or let the givens vary so that the two differ")
				return false
			}
		}
	}
	return true
}

// checkDecided sees that a choice has one answer on a card.
func (r *exerciseReader) checkDecided(card *practice.Card, p *practice.Part) bool {
	problem := card.Undecided(p)
	switch {
	case problem == "":
	case p.Choice.Items == nil:
		r.fault(r.firstUnder(keyOptions), "exercise-choice", problem,
			"change \"when\" of the options, or what the givens may be, so that on every card one option is right")
	default:
		r.fault(r.firstUnder(keyItems), "exercise-order", problem,
			"change what the givens may be, so that no two are the same in the digits that are asked for")
	}
	return problem == ""
}
