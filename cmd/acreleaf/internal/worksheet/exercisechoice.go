package worksheet

import (
	"fmt"
	"slices"
	"strings"

	"acreleaf/calc/formula"
	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// The keys of an option.
const (
	keyWhen    = "when"
	keySay     = "say"
	keyBecause = "because"
)

var optionKeys = []string{keyWhen, keySay, keyBecause}

// OptionKeys lists the keys of an option of an exercise.
func OptionKeys() []string { return slices.Clone(optionKeys) }

// An order or a choice has so many items or options: one leaves nothing to choose, and more are hard to look over on a
// phone.
const leastListed, mostListed = 2, 6

// readChoices reads what is answered without a number: "choose" with "options", and "order" with "items".
func (r *exerciseReader) readChoices() {
	choose, asked := r.entries[keyChoose]
	options := r.under(keyOptions)
	if r.both(keyChoose, keyOptions, len(options) > 0) {
		c := &practice.Choice{Question: choose.Value, Options: r.options(options)}
		r.made.Practice.Choices = append(r.made.Practice.Choices, c)
		r.checkListed("exercise-choice", choose, len(c.Options), keyOptions)
	}
	order, ordered := r.entries[keyOrder]
	items, steps := r.under(keyItems), r.entries[keyItems].Value == "steps"
	if entry, is := r.entries[keyItems]; is && !steps {
		r.fault(entry.ValueSpan, "exercise-order", fmt.Sprintf("%q is no list of items", entry.Value),
			"write \"items: steps\" for the steps of the work, or a line for each number that something is put in order by")
		return
	}
	if r.both(keyOrder, keyItems, len(items) > 0 || steps) {
		c := &practice.Choice{Question: order.Value, Items: r.items(items)}
		listed := len(items)
		if steps {
			c.Items = r.steps(order)
			listed = len(c.Items)
		}
		r.made.Practice.Choices = append(r.made.Practice.Choices, c)
		if c.Items != nil {
			r.checkListed("exercise-order", order, listed, keyItems)
		}
	}
	if (asked || ordered) && r.made.Hint == "" {
		r.fault(r.block.Span, "exercise-hint", "this exercise has no hint, and a wrong choice leads to the hint first",
			"add a line such as: hint: Compare it with the number in the text.")
	}
}

// under lists the entries of the table under a key, without that key before their own.
func (r *exerciseReader) under(key string) []markdown.Entry {
	var list []markdown.Entry
	for _, entry := range r.block.Entries {
		if name, is := strings.CutPrefix(entry.Key, key+"."); is {
			entry.Key = name
			list = append(list, entry)
		}
	}
	return list
}

// both says whether a question and its list are there. One without the other is a fault.
func (r *exerciseReader) both(question, list string, listed bool) bool {
	_, asked := r.entries[question]
	id := map[string]string{keyChoose: "exercise-choice", keyOrder: "exercise-order"}[question]
	examples := map[string]string{
		keyOptions: "options:\n  more:\n    when: nitrogen > \"10 ppm NO3-N\"\n    say: It is more\n" +
			"    because: It is above the limit.",
		keyItems: "items: steps",
	}
	switch {
	case asked && !listed:
		r.fault(r.entries[question].KeySpan, id, fmt.Sprintf("%q has no %s", question, list),
			"add lines such as:\n"+examples[list])
	case listed && !asked:
		r.fault(r.firstUnder(list), id, fmt.Sprintf("there are %s, and no question", list),
			"add a line such as: "+question+": Which is it?")
	}
	return asked && listed
}

func (r *exerciseReader) firstUnder(key string) message.Span {
	for _, entry := range r.block.Entries {
		if entry.Key == key || strings.HasPrefix(entry.Key, key+".") {
			return entry.KeySpan
		}
	}
	return r.block.Span
}

func (r *exerciseReader) checkListed(id string, at markdown.Entry, count int, what string) {
	if count < leastListed || count > mostListed {
		r.fault(at.KeySpan, id,
			fmt.Sprintf("there may be %d to %d %s, and this has %d", leastListed, mostListed, what, count),
			fmt.Sprintf("write %d to %d of them", leastListed, mostListed))
	}
}

// options reads the options, each a table of three texts.
func (r *exerciseReader) options(entries []markdown.Entry) []practice.Option {
	byName, names := map[string]map[string]markdown.Entry{}, []string{}
	for _, entry := range entries {
		name, key, _ := strings.Cut(entry.Key, ".")
		if !slices.Contains(optionKeys, key) {
			r.fault(entry.KeySpan, "exercise-choice", fmt.Sprintf("an option has no %q", key), write("", key, optionKeys))
			continue
		}
		if byName[name] == nil {
			byName[name] = map[string]markdown.Entry{}
			names = append(names, name)
		}
		byName[name][key] = entry
	}
	examples := map[string]string{keyWhen: `when: nitrogen > "10 ppm NO3-N"`, keySay: "say: It is more",
		keyBecause: "because: The limit is for nitrogen alone."}
	var list []practice.Option
	for _, name := range names {
		for _, key := range optionKeys {
			if _, is := byName[name][key]; !is {
				r.fault(r.firstUnder(keyOptions+"."+name), "exercise-choice",
					fmt.Sprintf("the option %q does not say %q", name, key), "add a line such as: "+examples[key])
			}
		}
		list = append(list, practice.Option{Text: byName[name][keySay].Value, Because: byName[name][keyBecause].Value,
			When: r.condition(byName[name][keyWhen])})
	}
	return list
}

// condition reads when an option is right. It is read once for its faults, and again where it is put to work.
func (r *exerciseReader) condition(entry markdown.Entry) practice.Condition {
	text := formula.Text{Text: entry.Value, Span: formula.Span(entry.ValueSpan)}
	scope := formula.Scope{Alone: r.single, Use: "calculation", In: "exercise", Hidden: func(string) bool { return false }}
	for _, u := range r.made.Practice.Uses {
		scope.Uses = append(scope.Uses, u.Name)
	}
	read := func(p *sheet.Passage, find func(string) *sheet.Use) (*sheet.Term, []formula.Fault) {
		own := scope
		own.Find = find
		return formula.Condition(own, p, text)
	}
	if entry.Key == "" {
		return nil // reported
	}
	_, faults := read(sheet.NewPassage(), r.graph().Find)
	for _, f := range faults {
		r.fault(message.Span(f.Span), f.ID, f.Text, f.Note)
	}
	return func(p *sheet.Passage, find func(string) *sheet.Use) sheet.Term {
		question, _ := read(p, func(name string) *sheet.Use {
			if r.find(name) == nil {
				return nil
			}
			return find(name)
		})
		return *question
	}
}

// graph has the calculations of the exercise, for what asks for their numbers.
func (r *exerciseReader) graph() *sheet.Graph {
	g := &sheet.Graph{}
	for _, u := range r.made.Practice.Uses {
		g.Add(u.Name, u.Sheet, u.Links)
	}
	return g
}

// items reads what is put in order: under the number that it is put in order by, its text.
func (r *exerciseReader) items(entries []markdown.Entry) []practice.Item {
	var list []practice.Item
	unit := ""
	for _, entry := range entries {
		u, name := r.split(entry.Key)
		if u == nil || !slices.Contains(askable(u.Sheet), name) {
			r.fault(entry.KeySpan, "exercise-order", fmt.Sprintf("%q is no number that this exercise works out", entry.Key),
				write("", entry.Key, r.names(askable)))
			continue
		}
		own := u.Sheet.FindResult(name).Unit.String()
		if len(list) > 0 && own != unit {
			r.fault(entry.KeySpan, "exercise-order",
				fmt.Sprintf("%s is in %s, and what comes before it in %s", entry.Key, own, unit),
				"put numbers of one unit in order")
		}
		unit = own
		list = append(list, practice.Item{Text: r.pieces(entry), Use: u.Name, Result: name})
	}
	return list
}

// pieces reads a text with givens in braces.
func (r *exerciseReader) pieces(entry markdown.Entry) []practice.Piece {
	var list []practice.Piece
	text, at := entry.Value, 0
	for _, place := range mention.FindAllStringSubmatchIndex(text, -1) {
		if at < place[0] {
			list = append(list, practice.Piece{Text: text[at:place[0]]})
		}
		if piece, good := r.mentioned(text[place[2]:place[3]], entry.ValueSpan, "exercise-order"); good {
			list = append(list, piece)
		}
		at = place[1]
	}
	if at < len(text) {
		list = append(list, practice.Piece{Text: text[at:]})
	}
	return list
}
