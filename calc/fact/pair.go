package fact

import (
	"cmp"
	"slices"
	"strings"
)

// A Pair is two traits that must not meet in a tank or a line.
type Pair struct {
	A, B    Trait
	Signal  Signal
	Says    string // what they do together
	Sources []string
}

// pairs are the traits that must not meet. What is not in the table was not looked up: it is no leave to mix.
var pairs = []Pair{
	{Acid, Ammonia, Danger, "Acid and ammonia boil up, spit and give off choking gas.", []string{"niosh-pocket"}},
	{Acid, Thiosulfate, Danger, "Acid sets poison gas (sulfur dioxide) free from thiosulfate.", []string{"chemistry"}},
	{Acid, Chlorine, Danger, "Acid sets chlorine gas free, which kills.", []string{"ifas-chlorine", "niosh-pocket"}},
	{Acid, Nitrate, Warning, "Strong acid sets nitric acid free from nitrate, with heat and poison fumes.",
		[]string{"chemistry"}},
	{Ammonia, Chlorine, Danger, "Ammonia and chlorine make a poison gas.", []string{"niosh-pocket"}},
	{Calcium, Sulfate, Notice, "Calcium and sulfate set to gypsum, a scale that plugs emitters.",
		[]string{"ucanr-mixing"}},
	{Calcium, Phosphate, Notice, "Calcium and phosphate set to a scale that plugs emitters.",
		[]string{"nrcs-nm-jar"}},
	{Calcium, Solution, Notice, "UAN with CAN-17 or another solution of calcium nitrate sets to a thick white mass that " +
		"plugs lines and injectors.", []string{"uan-article"}},
	{Calcium, Ammonia, Notice, "Ammonia raises the pH, and calcium falls out as lime that plugs emitters.",
		[]string{"chemistry"}},
	{Phosphate, Ammonia, Notice, "Ammonia raises the pH, and phosphate falls out with the calcium and magnesium of the " +
		"water.", []string{"nrcs-nm-jar", "chemistry"}},
}

// Pairs lists the table, the most dangerous first.
func Pairs() []Pair {
	sorted := slices.Clone(pairs)
	slices.SortStableFunc(sorted, func(a, b Pair) int { return cmp.Compare(b.Signal, a.Signal) })
	return sorted
}

// ID names the pair: "acid-with-ammonia".
func (p Pair) ID() string { return traitWords[p.A].id + "-with-" + traitWords[p.B].id }

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
			with := traitWords[other].called.In(language)
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
func KeepID(t Trait) string { return "keep-" + traitWords[t].id }

// ClogID is the id of the hazard that tells what a trait must be kept from, or lines are plugged: "clogs-calcium".
func ClogID(t Trait) string { return "clogs-" + traitWords[t].id }

// keptApart are the hazards of materials that meet: one for each pair, for where both are at hand, and two at most for
// each trait, for where a material stands alone: one for people, and one for lines.
func keptApart() []Hazard {
	var hazards []Hazard
	for _, p := range Pairs() {
		hazards = append(hazards, Hazard{
			ID: p.ID(), Name: Text{English: traitWords[p.A].called.English + " with " + traitWords[p.B].called.English},
			Signal: p.Signal, Says: Text{English: p.Says + " Never put the two in one tank or line."}, Sources: p.Sources,
		})
	}
	for _, t := range Traits() {
		called := traitWords[t].called.English
		people := Hazard{ID: KeepID(t), Name: Text{English: "what " + called + " must not meet"}}
		lines := Hazard{ID: ClogID(t), Name: Text{English: "what plugs lines with " + called}}
		for _, h := range []Hazard{people, lines} {
			if h, kept := keptFrom(t, h, h.ID == KeepID(t)); kept {
				hazards = append(hazards, h)
			}
		}
	}
	return hazards
}

// keptFrom fills in the hazard of one trait, with all that it must not meet: for people, or for lines.
func keptFrom(t Trait, h Hazard, forPeople bool) (filled Hazard, kept bool) {
	words := traitWords[t]
	var from []string
	for _, p := range Pairs() {
		if other := p.other(t); other != 0 && p.Signal > Notice == forPeople {
			from = append(from, traitWords[other].called.English)
			h.Signal = max(h.Signal, p.Signal)
			h.Sources = addNew(h.Sources, p.Sources)
		}
	}
	h.Says.English = words.holds + " Never let it meet " + listed(from) + " in a tank or a line."
	return h, words.holds != "" && len(from) > 0
}

// listed joins the parts of a list in a sentence: "a, b or c".
func listed(parts []string) string {
	if len(parts) < 2 {
		return strings.Join(parts, "")
	}
	last := len(parts) - 1
	return strings.Join(parts[:last], ", ") + " or " + parts[last]
}
