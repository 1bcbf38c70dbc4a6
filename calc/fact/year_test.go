package fact_test

import (
	"regexp"
	"slices"
	"strconv"
	"testing"

	"acreleaf/calc/fact"
)

// before is the year before the first volume of a journal that has one volume a year since: from memory, and each
// agrees with every paper of it in the bibliography.
var before = map[string]int{
	"California Agriculture":                                   1946,
	"European Journal of Soil Biology":                         1964,
	"HortScience":                                              1965,
	"HortTechnology":                                           1990,
	"Soil Science Society of America Journal":                  1936,
	"Industrial and Engineering Chemistry, Analytical Edition": 1928,
}

// A year that a source tells twice, in its id, title, address or number, is the same each time, and a volume is that of
// its year.
func TestYearsAgree(t *testing.T) {
	told := regexp.MustCompile(`(?:^|[^0-9a-zA-Z])((?:19|20)\d\d)(?:$|[^0-9a-zA-Z])`)
	volume := regexp.MustCompile(`^(\D+) (\d+)[:(]`)
	years, volumes := 0, 0
	for _, s := range fact.Sources() {
		if s.Year == "" {
			continue
		}
		for _, text := range []string{s.ID, s.Title, s.Address, s.Number} {
			for _, found := range told.FindAllStringSubmatch(text, -1) {
				years++
				if found[1] != s.Year {
					t.Errorf("%s is of %s, and %q tells another year", s.ID, s.Year, text)
				}
			}
		}
		if found := volume.FindStringSubmatch(s.Publisher); found != nil {
			number, err := strconv.Atoi(found[2])
			start, known := before[found[1]]
			if err != nil || !known || strconv.Itoa(start+number) != s.Year {
				t.Errorf("%s is of %s, and in volume %s of %s", s.ID, s.Year, found[2], found[1])
			}
			volumes++
		}
	}
	if years < 10 || volumes < 6 {
		t.Errorf("%d years and %d volumes were looked at: too few", years, volumes)
	}
}

// The signal words of ANSI Z535.6, from the least to the greatest harm.
func TestSignalWords(t *testing.T) {
	var words []string
	for s := fact.Notice; s <= fact.Danger; s++ {
		words = append(words, s.String())
	}
	if !slices.Equal(words, []string{"NOTICE", "CAUTION", "WARNING", "DANGER"}) {
		t.Errorf("%q", words)
	}
}

func TestTextInALanguage(t *testing.T) {
	both, one := fact.Text{"en": "water", "es": "agua"}, fact.Text{"en": "water"}
	for _, c := range []struct {
		text           fact.Text
		language, want string
	}{
		{both, "en", "water"}, {both, "es", "agua"}, {both, "ES", "agua"}, {both, "fr", "water"}, {one, "es", "water"},
	} {
		if got := c.text.In(c.language); got != c.want {
			t.Errorf("%+v in %q is %q, want %q", c.text, c.language, got, c.want)
		}
	}
}

// Each trait has a bit of its own, and the last in the table of words is the last in the list.
func TestTraitsAreListed(t *testing.T) {
	all, seen := fact.Traits(), fact.Trait(0)
	for _, trait := range all {
		if trait == 0 || trait&(trait-1) != 0 || seen&trait != 0 {
			t.Errorf("%b is no bit of its own", trait)
		}
		seen |= trait
	}
	if all[0] != fact.Acid || all[len(all)-1] != fact.Chlorine || seen&fact.Thiosulfate == 0 {
		t.Errorf("%b", all)
	}
}
