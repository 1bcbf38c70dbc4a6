package worksheet

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc/practice"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
)

const mostValues = 500 // that a given may have

// every parts the ends of a range from its step: "4 to 24 ppm NO3-N, every 1".
const every = ", every "

// readGivens reads the lines that are givens: one number, a list of them, or a range with a step.
func (r *exerciseReader) readGivens() {
	for _, entry := range r.block.Entries {
		if slices.Contains(exerciseKeys, entry.Key) || construct.Exercise.HasTable(entry.Key) {
			continue
		}
		u, name := r.split(entry.Key)
		if u == nil || u.Sheet.FindGiven(name) == nil {
			r.fault(entry.KeySpan, "given-unknown", fmt.Sprintf("this exercise has no given %q", entry.Key),
				write("", entry.Key, slices.Concat(exerciseKeys, r.names(givenNames))))
			r.unfit = true
			continue
		}
		r.readGiven(u, u.Sheet.FindGiven(name), entry)
	}
}

func (r *exerciseReader) readGiven(u *practice.Use, given *sheet.Given, entry markdown.Entry) {
	if from, is := strings.CutPrefix(entry.Value, "from "); is {
		r.readLink(u, given, entry, strings.TrimSpace(from))
		return
	}
	values, err := r.values(given, entry.Value)
	if err != nil {
		r.unfit = true
		r.unreadable(entry.ValueSpan, given.Name, err, entry.Key+": "+r.example(given))
		return
	}
	if len(values) == 1 {
		u.Fixed[given.Name] = values[0]
		return
	}
	if at := equalValues(values); at >= 0 {
		r.unfit = true
		r.fault(entry.ValueSpan, "exercise-values", fmt.Sprintf("%s: value %d of this list is the same as one before it",
			r.called(u, given.Name), at+1), "take one of the two out, so that cards differ")
		return
	}
	u.Varied = append(u.Varied, practice.Varied{Given: given.Name, Values: values})
}

// equalValues gives the place of a value that came before, or -1.
func equalValues(values []sheet.Entry) int {
	seen := map[float64]bool{}
	for i, v := range values {
		if seen[v.Value] {
			return i
		}
		seen[v.Value] = true
	}
	return -1
}

// example is how a given that varies may be written.
func (r *exerciseReader) example(given *sheet.Given) string {
	if len(given.Choices) > 1 {
		return given.Choices[0].Name + ", " + given.Choices[1].Name
	}
	return given.Example()
}

// values reads all that a given may be.
func (r *exerciseReader) values(given *sheet.Given, text string) ([]sheet.Entry, error) {
	text = r.language.PointDecimals(text)
	if ends, step, is := strings.Cut(text, every); is {
		return stepped(given, ends, strings.TrimSpace(step))
	}
	texts := strings.Split(text, ", ")
	if len(given.Choices) == 0 && !given.Date {
		last := strings.TrimSpace(texts[len(texts)-1])
		if _, unit, is := strings.Cut(last, " "); is {
			for i := range len(texts) - 1 {
				texts[i] = strings.TrimSuffix(strings.TrimSpace(texts[i]), " "+unit) + " " + unit
			}
		}
	}
	var list []sheet.Entry
	for _, one := range texts {
		e, err := single(given, strings.TrimSpace(one))
		if err != nil {
			return nil, err
		}
		list = append(list, e)
	}
	return list, nil
}

// single reads one number, since a card has no ranges.
func single(given *sheet.Given, text string) (sheet.Entry, error) {
	e, err := given.Read(text)
	if err == nil && e.Value != e.High {
		return e, fmt.Errorf("%s is a range, and a card has one number; write what it may be as %s%s1, or as a list",
			text, text, every)
	}
	return e, err
}

// plain is a number in digits: no power of ten, no other base, no "inf".
var plain = regexp.MustCompile(`^(?:\d+\.?\d*|\.\d+)$`)

// stepped reads the ends of a range and goes from one to the other in steps. Each number is counted from the digits of
// the step, so that 0.1 and 0.2 are 0.3.
func stepped(given *sheet.Given, ends, step string) ([]sheet.Entry, error) {
	e, err := given.Read(ends)
	if err != nil {
		return nil, err
	}
	by, err := strconv.ParseFloat(step, 64)
	unfit := e.Typed >= e.TypedHigh || len(given.Choices) > 0 || given.Date
	if err != nil || unfit || !plain.MatchString(step) || !(by > 0) {
		return nil, fmt.Errorf("%s%s%s is not a range of numbers and a step above 0; write for example 4 to 24 %s%s2",
			ends, every, step, given.Unit, every)
	}
	count := (e.TypedHigh-e.Typed)/by + slack
	if count >= mostValues {
		return nil, fmt.Errorf("%s%s%s is more than %d numbers; write a larger step", ends, every, step, mostValues)
	}
	places := max(decimals(step), decimals(strconv.FormatFloat(e.Typed, 'f', -1, 64)))
	var list []sheet.Entry
	for i := range int(count) + 1 {
		text := strconv.FormatFloat(e.Typed+float64(i)*by, 'f', places, 64)
		one, err := given.Read(text + " " + e.Unit.String())
		if err != nil {
			return nil, err
		}
		list = append(list, one)
	}
	return list, nil
}

// readLink reads "from soil.nitrogen".
func (r *exerciseReader) readLink(u *practice.Use, given *sheet.Given, entry markdown.Entry, from string) {
	source, name := r.split(from)
	if r.single {
		r.unfit = true
		r.fault(entry.ValueSpan, "link-unknown", "an exercise of one calculation takes no number from another",
			"write what the given may be, or make it a chain of calculations")
		return
	}
	good := source != nil && source != u
	if good {
		_, good = source.Sheet.UnitOf(name)
	}
	if uses := r.made.Practice.Uses; good && slices.Index(uses, source) > slices.Index(uses, u) {
		r.unfit = true
		r.fault(entry.ValueSpan, "exercise-uses",
			fmt.Sprintf("%q takes a number from %q, which comes after it in the chain", u.Name, source.Name),
			"write the chain in the order of the work, with "+source.Name+" before "+u.Name)
		return
	}
	if !good {
		r.unfit = true
		r.fault(entry.ValueSpan, "link-unknown", fmt.Sprintf("this exercise has no %q to take", from),
			write("from ", from, r.names(askable)))
		return
	}
	u.Links[given.Name] = sheet.Link{Use: source.Name, Name: name}
}

// checkGivens reports givens that have no number, and links that do not fit.
func (r *exerciseReader) checkGivens() {
	g := r.graph()
	for _, u := range r.made.Practice.Uses {
		for _, given := range u.Sheet.Givens {
			link, linked := u.Links[given.Name]
			_, fixed := u.Fixed[given.Name]
			varies := slices.ContainsFunc(u.Varied, func(v practice.Varied) bool { return v.Given == given.Name })
			_, tried := r.entries[r.called(u, given.Name)]
			switch {
			case linked:
				if err := g.CheckLink(u.Sheet, given.Name, link); err != nil {
					r.unfit = true
					r.fault(r.at(r.called(u, given.Name)), "link-unfit", err.Error(), "take the number from elsewhere, or write it")
				}
			case fixed, varies, tried, given.Optional, r.unfit:
			default:
				if meant, usual := given.Unsaid(); usual {
					u.Fixed[given.Name] = meant
					continue
				}
				r.fault(r.block.Span, "given-missing", "this exercise does not say "+r.called(u, given.Name),
					fmt.Sprintf("add a line such as: %s: %s", r.called(u, given.Name), given.Example()))
			}
		}
	}
}
