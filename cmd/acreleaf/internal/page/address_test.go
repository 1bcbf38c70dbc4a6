package page

import (
	"errors"
	"net/url"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
)

func TestAddressOf(t *testing.T) {
	type head struct{ language, translates string }
	for _, test := range []struct {
		path string
		head head
		want Address
	}{
		{"content/guides/soil.md", head{}, Address{kind.Guide, "", "guides/soil"}},
		{"guides/soil.md", head{"en", ""}, Address{kind.Guide, "", "guides/soil"}},
		{"content/guides/suelo.md", head{"es", "soil.md"}, Address{kind.Guide, "es", "guides/suelo"}},
		{"content/guides/suelo.md", head{"es", ""}, Address{kind.Guide, "es", "guides/suelo"}},
		{"content/workshops/frost-night.md", head{}, Address{kind.Workshop, "", "workshops/frost-night"}},
		{"content/courses/young/1-soil.md", head{}, Address{kind.Lesson, "", "courses/young/1-soil"}},
		{"content/courses/young/course.md", head{}, Address{kind.Course, "", "courses/young"}},
		{"content/courses/young/curso.md", head{"es", "course.md"}, Address{kind.Course, "es", "courses/young"}},
		{"content/guides/course.md", head{}, Address{kind.Guide, "", "guides/course"}},
		{"content/manual/prensa.md", head{"es", "press.md"}, Address{kind.Manual, "es", "manual/prensa"}},
		{"content/home.md", head{}, Address{kind.Home, "", ""}},
		{"content/inicio.md", head{"es", "home.md"}, Address{kind.Home, "es", ""}},
		{"content/guides/inicio.md", head{"es", "home.md"}, Address{kind.Guide, "es", "guides/inicio"}},
	} {
		m := Metadata{Language: test.head.language, Translates: config.Value{Text: test.head.translates}}
		got, err := AddressOf(test.path, m, "en")
		if err != nil || got != test.want {
			t.Errorf("%s: %+v, %v, want %+v", test.path, got, err, test.want)
		}
	}
}

func TestAddressOfABadName(t *testing.T) {
	const (
		part = "cannot be part of an address"
		dot  = "has a dot in its name"
		code = "has the code of a language in its name"
		away = "is not in a folder for pages"
		any  = `move it to one of the folders guides, workshops, courses, manual; the home page is "home.md"`
	)
	for path, want := range map[string]struct{ text, note string }{
		"guides/Soil.md":        {`"Soil" ` + part, `single hyphens: "soil"`},
		"guides/soil report.md": {`"soil report" ` + part, `single hyphens: "soil-report"`},
		"guides/Año_nuevo.md":   {`"Año_nuevo" ` + part, `single hyphens: "ano-nuevo"`},
		"guides/An\u0303o.md":   {"cannot be", `single hyphens: "ano"`},
		"guides/施肥.md":          {`"施肥" ` + part, `small letters, digits and single hyphens: "soil"`},
		"guides/-soil.md":       {`"-soil" ` + part, `single hyphens: "soil"`},
		"guides//soil.md":       {`"" ` + part, "small letters"},
		".md":                   {`"" ` + part, "small letters"},
		"guides/../soil.md":     {dot, "use a hyphen in place of the dot"},
		"guides/soil.es.md":     {code, "and say in its metadata:\nlanguage: es\ntranslates: soil.md"},
		"home.es.md":            {code, "language: es\ntranslates: home.md"},
		"guides/soil.en.md":     {code, `take ".en" out`},
		"guides/soil.v2.md":     {dot, "use a hyphen in place of the dot"},
		"guides/soil.es.fr.md":  {dot, "use a hyphen in place of the dot"},
		"guides/soil.txt":       {"is not the name of a page", `end it with ".md"`},
		"guides/index.md":       {`a page cannot be named "index"`, "name it after what it is about"},
		"guide/soil.md":         {away, `move it to the folder "guides"`},
		"soil.md":               {away, any},
		"guides.md":             {away, any},
		"courses/soil.md":       {"is not in a course", "courses/young-trees/soil.md"},
		"weather/home.md":       {away, any},

		"workshops/report/leader.md": {`named "leader" here: the notes for who leads workshops/report.md`, "name it after"},
	} {
		_, err := AddressOf("content/"+path, Metadata{}, "en")
		var bad *AddressError
		if !errors.As(err, &bad) || !strings.Contains(bad.Text, want.text) || !strings.Contains(bad.Note, want.note) {
			t.Errorf("%s: %v, want %+v", path, err, want)
		}
	}
}

// sites is every sort of address, each of one string.
var sites = []string{"content/home.md", "content/inicio.md", "content/guides/soil.md", "content/guides/suelo.md",
	"content/guides/water.md", "content/courses/young/course.md",
	"content/courses/young/soil.md", "content/manual/young.md"}

func TestLinksLeadWhereTheyShould(t *testing.T) {
	for _, folder := range []string{"/", "/walnuts/", "/a/b/"} {
		for _, fromPath := range sites {
			for _, toPath := range sites {
				from, to := mustAddress(t, fromPath), mustAddress(t, toPath)
				link := from.To(to)
				if strings.HasPrefix(link, "/") || !strings.HasSuffix(link, "/") {
					t.Errorf("from %s to %s: %q", from, to, link)
				}
				// A browser's own rules must find the page, in whatever folder the site stands.
				base := &url.URL{Scheme: "https", Host: "example.org", Path: folder + from.String()}
				found, err := base.Parse(link)
				if err != nil || found.Path != folder+to.String() {
					t.Errorf("from %s to %s: %q leads to %v (%v)", from, to, link, found, err)
				}
				asset, err := base.Parse(from.ToPath("assets/page.css"))
				if err != nil || asset.Path != folder+"assets/page.css" {
					t.Errorf("from %s to an asset: %v (%v)", from, asset, err)
				}
			}
		}
	}
}

func mustAddress(t *testing.T, path string) Address {
	t.Helper()
	var m Metadata
	switch path {
	case "content/inicio.md":
		m = Metadata{Language: "es", Translates: config.Value{Text: "home.md"}}
	case "content/guides/suelo.md":
		m = Metadata{Language: "es"}
	}
	a, err := AddressOf(path, m, "en")
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestLinksByHand(t *testing.T) {
	home, soil := Address{Kind: kind.Home}, Address{kind.Guide, "", "guides/soil"}
	water, suelo := Address{kind.Guide, "", "guides/water"}, Address{kind.Guide, "es", "guides/soil"}
	for _, test := range []struct{ got, want string }{
		{home.To(home), "./"},
		{home.To(soil), "guides/soil/"},
		{soil.To(home), "../../"},
		{soil.To(soil), "./"},
		{soil.To(water), "../water/"},
		{soil.To(suelo), "../../es/guides/soil/"},
		{suelo.To(soil), "../../../guides/soil/"},
		{soil.ToPath("guides/soil/picture.svg"), "picture.svg"},
		{soil.ToPath("guides/soil.svg"), "../soil.svg"},
		{soil.File(), "guides/soil/index.html"},
		{home.File(), "index.html"},
	} {
		if test.got != test.want {
			t.Errorf("got %q, want %q", test.got, test.want)
		}
	}
}

func TestCheckLanguage(t *testing.T) {
	for said, want := range map[string]string{"": "", "en": "", "es": "", "fr": `the site has no language "fr"`} {
		src := &message.Source{Name: "a.md", Text: []byte("---\nlanguage: " + said)}
		m := Metadata{Language: said, Places: Places{Language: message.Span{Start: 14, End: 16}}}
		l := CheckLanguage(src, m, []string{"en", "es"})
		got := ""
		if len(l) > 0 {
			got = l[0].Text
			if l[0].Span != m.Places.Language || l[0].Source != src || l[0].Note == "" {
				t.Errorf("message %+v", l[0])
			}
		}
		if got != want {
			t.Errorf("%q: %q, want %q", said, got, want)
		}
	}
}

func TestOriginal(t *testing.T) {
	for name, want := range map[string]string{"guides/suelo.md": "guides/soil.md", "inicio.md": "soil.md"} {
		if got := Original(name, Metadata{Translates: config.Value{Text: "soil.md"}}); got != want {
			t.Errorf("%s translates %q, want %q", name, got, want)
		}
	}
	if got := Original("guides/soil.md", Metadata{}); got != "" {
		t.Errorf("a page of its own translates %q", got)
	}
}
