package config

import (
	"strings"
	"testing"
	"testing/fstest"
)

func TestSees(t *testing.T) {
	site, _, said := Load(fstest.MapFS{"site.yaml": {Data: []byte("office: A\nlanguage: [en, es]\nsee:\n  en:\n" +
		"    burn: leaf  burn\n    NO3: [nitrate, ppm]\n  es: {quemado: quemaduras}\n")}}, "site.yaml")
	if len(said) > 0 {
		t.Fatal(printed(said))
	}
	var got []string
	for _, language := range []string{"en", "es", "fr"} {
		for _, s := range site.See[language] {
			for _, to := range s.To {
				got = append(got, language+" "+s.Word.Text+" > "+to.Text)
			}
		}
	}
	want := "en burn > leaf burn, en NO3 > nitrate, en NO3 > ppm, es quemado > quemaduras"
	if strings.Join(got, ", ") != want {
		t.Errorf("got %v, want %s", got, want)
	}
}

func TestFaultsOfSees(t *testing.T) {
	for text, want := range map[string]string{
		"see:\n  fr: {a: b}\n":       `has no key "fr"`,
		"see:\n  en: [a, b]\n":       `its parts need names`,
		"see:\n  en: {a: }\n":        `"a" leads to no word`,
		"see:\n  en: {a: []}\n":      `"a" leads to no word`,
		"see:\n  en: {a: {b: c}}\n":  `needs plain texts`,
		"see: burn\n":                `needs lines of its own`,
		"see:\n  en: {a: b, a: c}\n": `"a" is written twice`,
	} {
		_, _, said := Load(fstest.MapFS{"site.yaml": {Data: []byte("office: A\n" + text)}}, "site.yaml")
		if !strings.Contains(printed(said), want) {
			t.Errorf("%q gives\n%swant %q", text, printed(said), want)
		}
	}
}
