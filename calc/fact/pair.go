package fact

import (
	"cmp"
	"slices"
)

// A Pair is two traits that must not meet in a tank or a line.
type Pair struct {
	A, B    Trait
	Signal  Signal
	Sources []string
}

// pairs are the traits that must not meet. What is not in the table was not looked up: it is no leave to mix.
var pairs = []Pair{
	{Acid, Ammonia, Danger, []string{"niosh-pocket"}},
	{Acid, Thiosulfate, Danger, []string{"chemistry"}},
	{Acid, Chlorine, Danger, []string{"ifas-chlorine", "niosh-pocket"}},
	{Acid, Nitrate, Warning, []string{"chemistry"}},
	{Ammonia, Chlorine, Danger, []string{"niosh-pocket"}},
	{Calcium, Sulfate, Notice, []string{"ucanr-mixing"}},
	{Calcium, Phosphate, Notice, []string{"nrcs-nm-jar"}},
	{Calcium, Solution, Notice, []string{"uan-article"}},
	{Calcium, Ammonia, Notice, []string{"chemistry"}},
	{Phosphate, Ammonia, Notice, []string{"nrcs-nm-jar", "chemistry"}},
}

// Pairs lists the table, the most dangerous first.
func Pairs() []Pair {
	sorted := slices.Clone(pairs)
	slices.SortStableFunc(sorted, func(a, b Pair) int { return cmp.Compare(b.Signal, a.Signal) })
	return sorted
}

// ID names the pair: "acid-with-ammonia".
func (p Pair) ID() string { return traitIDs[p.A] + "-with-" + traitIDs[p.B] }

// other is the trait that a trait must not meet by this pair, 0 when the pair does not have the trait.
func (p Pair) other(t Trait) Trait {
	switch t {
	case p.A:
		return p.B
	case p.B:
		return p.A
	}
	return 0
}

// A Meeting is what something must not meet in a tank or a line.
type Meeting struct {
	With    string // what it is called: "strong acid"
	Signal  Signal
	Sources []string
}

// Apart lists what a thing of these traits must not meet, the most dangerous first, by its name in a language. What is
// not in it was not looked up.
func Apart(traits Trait, language string) []Meeting {
	var meetings []Meeting
	for _, p := range Pairs() {
		for _, t := range Traits() {
			other := p.other(t)
			if traits&t == 0 || other == 0 {
				continue
			}
			with := other.called().In(language)
			if i := slices.IndexFunc(meetings, func(m Meeting) bool { return m.With == with }); i < 0 {
				meetings = append(meetings, Meeting{With: with, Signal: p.Signal, Sources: slices.Clone(p.Sources)})
			} else {
				meetings[i].Sources = addNew(meetings[i].Sources, p.Sources)
			}
		}
	}
	return meetings
}

// addNew adds to a list what it does not have.
func addNew(list, more []string) []string {
	for _, id := range more {
		if !slices.Contains(list, id) {
			list = append(list, id)
		}
	}
	return list
}

// KeepID is the id of the hazard that tells what a trait must be kept from, or people come to harm: "keep-acid".
func KeepID(t Trait) string { return "keep-" + traitIDs[t] }

// ClogID is the id of the hazard that tells what a trait must be kept from, or lines are plugged: "clogs-calcium".
func ClogID(t Trait) string { return "clogs-" + traitIDs[t] }

// keptApart are the hazards of materials that meet: one for each pair, for where both are at hand, and two at most for
// each trait, for where a material is alone: one for people, and one for lines.
func keptApart() []Hazard {
	var hazards []Hazard
	for _, p := range Pairs() {
		hazards = append(hazards, Hazard{
			ID: p.ID(), Name: filled(text("pair.name"), map[string]Text{"one": p.A.called(), "other": p.B.called()}),
			Signal: p.Signal, Says: joined(text(p.ID()+".says"), text("pair.never")), Sources: p.Sources,
		})
	}
	for _, t := range Traits() {
		one := map[string]Text{"one": t.called()}
		people := Hazard{ID: KeepID(t), Name: filled(text("keep.name"), one)}
		lines := Hazard{ID: ClogID(t), Name: filled(text("clogs.name"), one)}
		for _, h := range []Hazard{people, lines} {
			if h, kept := keptFrom(t, h, h.ID == KeepID(t)); kept {
				hazards = append(hazards, h)
			}
		}
	}
	return hazards
}

// keptFrom fills in the hazard of one trait, with all that it must not meet: for people, or for lines.
func keptFrom(t Trait, h Hazard, forPeople bool) (hazard Hazard, kept bool) {
	var from []Trait
	for _, p := range Pairs() {
		if other := p.other(t); other != 0 && p.Signal > Notice == forPeople {
			from = append(from, other)
			h.Signal = max(h.Signal, p.Signal)
			h.Sources = addNew(h.Sources, p.Sources)
		}
	}
	holds := text("trait." + traitIDs[t] + ".holds")
	h.Says = filled(text("apart.says"), map[string]Text{"holds": holds, "others": listed(from)})
	return h, len(holds) > 0 && len(from) > 0
}

// listed joins what traits are called in a sentence: "a, b or c".
func listed(traits []Trait) Text {
	list := Text{}
	for language, or := range text("apart.or") {
		for i, t := range traits {
			switch {
			case i == 0:
			case i == len(traits)-1:
				list[language] += " " + or + " "
			default:
				list[language] += ", "
			}
			list[language] += t.called().In(language)
		}
	}
	return list
}

// joined is one text after the other, in the languages that have both.
func joined(first, second Text) Text {
	both := Text{}
	for language, said := range first {
		if second.Has(language) {
			both[language] = said + " " + second[language]
		}
	}
	return both
}
