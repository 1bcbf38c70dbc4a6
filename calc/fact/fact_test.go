package fact_test

import (
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/fact"
	"acreleaf/calc/words"
)

func TestBibliographyIsSortedByID(t *testing.T) {
	id := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	all := fact.Sources()
	for i, s := range all {
		if !id.MatchString(s.ID) {
			t.Errorf("%q cannot be an id", s.ID)
		}
		if i > 0 && all[i-1].ID >= s.ID {
			t.Errorf("%s stands behind %s", s.ID, all[i-1].ID)
		}
		if found, ok := fact.FindSource(s.ID); !ok || found != s {
			t.Errorf("%s is found as %+v", s.ID, found)
		}
		if s.Title == "" || !slices.Contains(fact.Kinds, s.Kind) {
			t.Errorf("%s has no title, or the kind %q", s.ID, s.Kind)
		}
		if s.Note != "" && !strings.HasSuffix(s.Note, ".") {
			t.Errorf("the note of %s is no sentence: %q", s.ID, s.Note)
		}
	}
	if _, found := fact.FindSource("no-such"); found {
		t.Error("a source is found that is not there")
	}
}

// Whoever doubts a figure must be able to look it up.
func TestEveryPublicationCanBeFound(t *testing.T) {
	for _, s := range fact.Sources() {
		if !s.Findable() {
			t.Errorf("%s is a publication without an address and without a number to ask a library for", s.ID)
		}
		if !s.Kind.Printed() && (s.Address != "" || s.Number != "") {
			t.Errorf("%s is no publication, and has an address or a number", s.ID)
		}
		if s.Address == "" {
			continue
		}
		if u, err := url.Parse(s.Address); err != nil || u.Host == "" || u.Scheme != "http" && u.Scheme != "https" {
			t.Errorf("the address of %s does not open in a browser: %q", s.ID, s.Address)
		}
	}
	unprinted := fact.Source{ID: "a", Title: "A", Kind: fact.Handbook}
	if unprinted.Findable() {
		t.Error("a handbook without an address and a number can be found")
	}
}

func TestHazardsAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, h := range fact.Hazards() {
		if seen[h.ID] {
			t.Errorf("the hazard %s stands twice", h.ID)
		}
		seen[h.ID] = true
		if found, ok := fact.FindHazard(h.ID); !ok || found.ID != h.ID {
			t.Errorf("%s is not found", h.ID)
		}
		if h.Name.In("en") == "" || h.Signal < fact.Notice || h.Signal > fact.Danger || len(h.Sources) == 0 {
			t.Errorf("%s lacks its name, its signal or its sources: %+v", h.ID, h)
		}
		for _, text := range []string{h.Sentence("en"), h.Sentence("es")} {
			if !strings.HasSuffix(text, ".") || strings.Contains(text, "  ") || strings.Contains(text, "{") {
				t.Errorf("%s says %q", h.ID, text)
			}
		}
		for _, id := range h.Sources {
			if _, known := fact.FindSource(id); !known {
				t.Errorf("%s rests on the source %q, which is not in the bibliography", h.ID, id)
			}
		}
	}
	if _, found := fact.FindHazard("no-such"); found {
		t.Error("a hazard is found that is not there")
	}
}

// ANSI Z535.6 keeps DANGER, WARNING and CAUTION for what harms people. Each of these was read: who is harmed?
func TestOnlyWhatHarmsPeopleHasAWordForPeople(t *testing.T) {
	people := []string{"acid", "ammonia", "pressure", "fire", "backflow", "drinking-water", "chlorine", "fumigation",
		"raw-manure", "nitrate-to-wells", "acid-with-ammonia", "acid-with-thiosulfate", "acid-with-chlorine",
		"acid-with-nitrate",
		"ammonia-with-chlorine", "keep-acid", "keep-ammonia", "keep-nitrate", "keep-thiosulfate"}
	for _, h := range fact.Hazards() {
		if (h.Signal > fact.Notice) != slices.Contains(people, h.ID) {
			t.Errorf("%s is a %s: does it harm people?", h.ID, h.Signal)
		}
	}
}

func TestPairsAreTold(t *testing.T) {
	last := fact.Danger
	seen := map[string]bool{}
	for _, p := range fact.Pairs() {
		if p.Signal > last {
			t.Errorf("%s stands below a weaker one", p.ID())
		}
		last = p.Signal
		if seen[p.ID()] || p.A == p.B {
			t.Errorf("%s stands twice, or is one trait", p.ID())
		}
		seen[p.ID()] = true
		h, found := fact.FindHazard(p.ID())
		if !found || !strings.Contains(h.Sentence("en"), "Never put the two in one tank or line.") {
			t.Errorf("%s is no hazard, or does not say that the two must not meet: %q", p.ID(), h.Sentence("en"))
		}
		// Each of the two, alone, says that it must not meet the other.
		for _, t2 := range []fact.Trait{p.A, p.B} {
			id := fact.ClogID(t2)
			if p.Signal > fact.Notice {
				id = fact.KeepID(t2)
			}
			alone, found := fact.FindHazard(id)
			if found && (alone.Signal < p.Signal || (alone.Signal > fact.Notice) != (p.Signal > fact.Notice)) {
				t.Errorf("%s is a %s alone, and a %s with the other", alone.ID, alone.Signal, p.Signal)
			}
			if !found && t2 != fact.Chlorine {
				t.Errorf("%s is not there: no hazard tells that the two must not meet", id)
			}
		}
	}
	for id, want := range map[string]string{
		"clogs-calcium": "This material holds calcium. Never let it meet sulfate, phosphate, UAN or ammonia in a " +
			"tank or a line.",
		"keep-ammonia": "This material holds ammonia. Never let it meet strong acid or chlorine (bleach) in a " +
			"tank or a line.",
		"clogs-ammonia": "This material holds ammonia. Never let it meet calcium or phosphate in a tank or a line.",
		"keep-acid": "This material is a strong acid. Never let it meet ammonia, thiosulfate, chlorine (bleach) or nitrate " +
			"in a tank or a line.",
	} {
		if alone, _ := fact.FindHazard(id); alone.Sentence("en") != want {
			t.Errorf("%s says %q, want %q", id, alone.Sentence("en"), want)
		}
	}
}

// What can blind or choke is for an ambulance, and what is breathed comes first: Minnesota Department of Agriculture
// (call 911), North Dakota Department of Health (fresh air, and flushing with water).
func TestFirstAidCallsForHelp(t *testing.T) {
	for _, id := range []string{"acid", "ammonia"} {
		h, _ := fact.FindHazard(id)
		for _, aid := range []string{h.Aid.In("en"), h.Aid.In("es")} {
			if !strings.Contains(aid, "911") || !strings.Contains(aid, "flush") && !strings.Contains(aid, "enjuague") {
				t.Errorf("the first aid for %s is %q", id, aid)
			}
		}
	}
	ammonia, _ := fact.FindHazard("ammonia")
	if !strings.HasPrefix(ammonia.Aid.In("en"), "If breathed: get upwind into fresh air") ||
		!strings.HasPrefix(ammonia.Aid.In("es"), "Si lo respira:") {
		t.Errorf("the first aid for ammonia does not start with breathing: %q", ammonia.Aid)
	}
}

// 22 CCR 64482 names babies and pregnant women.
func TestDrinkingWaterNamesWhomItHarms(t *testing.T) {
	h, _ := fact.FindHazard("drinking-water")
	for says, people := range map[string][]string{
		h.Says.In("en"): {"babies", "pregnant women"}, h.Says.In("es"): {"bebés", "embarazadas"},
	} {
		for _, who := range people {
			if !strings.Contains(says, who) {
				t.Errorf("%q does not name %s", says, who)
			}
		}
	}
}

// Every hazard is told in every language, and no text of the files is left over.
func TestFactsHaveTheirTexts(t *testing.T) {
	asked := map[string]bool{"pair.name": true, "pair.never": true, "keep.name": true, "clogs.name": true,
		"apart.says": true, "apart.or": true}
	for _, h := range fact.Hazards() {
		for _, part := range []string{".name", ".says", ".aid"} {
			asked[h.ID+part] = true
		}
		for _, language := range words.Languages() {
			if !h.Name.Has(language) || !h.Says.Has(language) || len(h.Aid) > 0 && !h.Aid.Has(language) {
				t.Errorf("%s is not told in %s: write %s.says in calc/words/%s/hazards.txt", h.ID, language, h.ID, language)
			}
			if strings.ContainsAny(h.Name.In(language)+h.Sentence(language), "{}") {
				t.Errorf("a name is not filled in: %q", h.Sentence(language))
			}
		}
	}
	for _, language := range words.Languages() {
		for _, key := range words.Keys(language) {
			_, known := fact.FindSource(strings.TrimPrefix(key.Key, "title."))
			if key.File == "hazards" && !asked[key.Key] && !strings.HasPrefix(key.Key, "trait.") ||
				key.File == "sources" && !known {
				t.Errorf("calc/words/%s/%s: there is no such hazard or source", language, key)
			}
		}
	}
}
