package words

import (
	"strings"
	"testing"
)

func TestAFileIsRead(t *testing.T) {
	f, err := read(`# for translators
title: Nitrogen: how much
say.long: It goes on
  and on.

each.first: primer
each.second: segundo
result.*-cost.label: Costo, * material
result.second-cost.label: Otro
remark.*-dear: El * material cuesta {*-cost}.
slip.a: = say.long
slip.b: = tree-rate: say.other
`)
	if err != nil {
		t.Fatal(err)
	}
	if err := f.follow(map[string]file{"tree-rate": {"say.other": {"Other.", 1, false}}}); err != nil {
		t.Fatal(err)
	}
	want := map[string]string{
		"title": "Nitrogen: how much", "say.long": "It goes on and on.", "slip.a": "It goes on and on.", "slip.b": "Other.",
		"result.first-cost.label": "Costo, primer material", "result.second-cost.label": "Otro",
		"remark.first-dear":  "El primer material cuesta {first-cost}.",
		"remark.second-dear": "El segundo material cuesta {second-cost}.",
	}
	for key, text := range want {
		if f[key].text != text {
			t.Errorf("%s is %q, want %q", key, f[key].text, text)
		}
	}
	if len(f) != len(want) {
		t.Errorf("the file has %d texts, want %d: %v", len(f), len(want), f)
	}
	if f["say.long"].line != 3 || f["remark.first-dear"].line != f["remark.second-dear"].line {
		t.Errorf("the lines are %d and %d", f["say.long"].line, f["remark.first-dear"].line)
	}
}

func TestAFileThatCannotBeReadSaysWhere(t *testing.T) {
	for text, want := range map[string]string{
		"title Nitrogen":             "line 1: write a key",
		"title: a\ntitle: b":         "line 2: write a key",
		"  goes on":                  "line 1: there is no key",
		"title: a\n\n  goes on":      "line 3: there is no key",
		"title: a\nresult.*-cost: *": "line 2: the key has a *",
		"title: = summary":           "line 1: there is no text summary",
	} {
		f, err := read(text)
		if err == nil {
			err = f.follow(nil)
		}
		if err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

// What a language lacks is told in English, and marked. The English files say which file has a key: a calculation's own
// text is never replaced by a shared one.
func TestWhatIsNotTranslatedIsEnglish(t *testing.T) {
	l := library{
		"en": {"soil": {"title": {"Soil", 1, false}, "given.depth.label": {"Depth of the sample", 2, false}},
			shared: {"given.depth.label": {"Depth", 1, false}, "given.trees.label": {"Trees", 2, false}}},
		"es": {"soil": {"name.depth": {"hondura", 1, false}},
			shared: {"given.depth.label": {"Profundidad", 1, false}, "given.trees.label": {"Árboles", 2, false}}},
	}
	texts := &Texts{Language: "es", library: l, calculation: "soil", asked: map[Key]bool{}}
	for key, want := range map[string]string{
		"title": "Soil, foreign", "given.depth.label": "Depth of the sample, foreign", "given.trees.label": "Árboles",
		"name.depth": "hondura", "given.none.label": "none",
	} {
		text, foreign, ok := texts.Find(key)
		if foreign {
			text += ", foreign"
		}
		if !ok {
			text = "none"
		}
		if text != want {
			t.Errorf("%s is %q, want %q", key, text, want)
		}
	}
	if len(texts.Asked()) != 4 || !texts.asked[Key{shared, "given.trees.label"}] {
		t.Errorf("it was asked for %v", texts.Asked())
	}
}

func TestLanguagesOfTags(t *testing.T) {
	for tag, want := range map[string]string{"en": "en", "es": "es", "es-MX": "es", "ES": "es", "pt": "en", "": "en"} {
		if got := Language(tag); got != want {
			t.Errorf("%q is %s, want %s", tag, got, want)
		}
	}
	if got := InGeneral("es").DayText(2027, 4, 5); got != "5 de abril de 2027" {
		t.Errorf("a day is %q", got)
	}
	if got := InGeneral("pt").DayText(2027, 4, 5); got != "Apr 5, 2027" {
		t.Errorf("a day of a language without words is %q", got)
	}
	if got := Fill("{low} to {high}", "low", "0", "high", "5"); got != "0 to 5" {
		t.Errorf("filled: %q", got)
	}
}
