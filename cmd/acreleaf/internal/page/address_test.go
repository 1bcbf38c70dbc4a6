package page

import (
	"errors"
	"net/url"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
)

func TestAddressOf(t *testing.T) {
	for path, want := range map[string]Address{
		"content/guides/soil.md":           {kind.Guide, "", "guides/soil"},
		"guides/soil.md":                   {kind.Guide, "", "guides/soil"},
		"content/guides/soil.es.md":        {kind.Guide, "es", "guides/soil"},
		"content/workshops/frost-night.md": {kind.Workshop, "", "workshops/frost-night"},
		"content/courses/young/1-soil.md":  {kind.Lesson, "", "courses/young/1-soil"},
		"content/courses/young.md":         {kind.Lesson, "", "courses/young"},
		"content/manual/press.es.md":       {kind.Manual, "es", "manual/press"},
		"content/home.md":                  {kind.Home, "", ""},
		"content/home.es.md":               {kind.Home, "es", ""},
	} {
		got, err := AddressOf(path)
		if err != nil || got != want {
			t.Errorf("%s: %+v, %v, want %+v", path, got, err, want)
		}
	}
}

func TestAddressOfABadName(t *testing.T) {
	const (
		part = "cannot be part of an address"
		dot  = "has a dot in its name"
		away = "is not in a folder for pages"
		any  = `move it to one of the folders guides, workshops, courses, manual; the home page is "home.md"`
	)
	for path, want := range map[string]struct{ text, note string }{
		"guides/Soil.md":        {`"Soil" ` + part, `single hyphens: "soil"`},
		"guides/soil report.md": {`"soil report" ` + part, `single hyphens: "soil-report"`},
		"guides/Año_nuevo.md":   {`"Año_nuevo" ` + part, `single hyphens: "ano-nuevo"`},
		"guides/施肥.md":          {`"施肥" ` + part, `small letters, digits and single hyphens: "soil"`},
		"guides/-soil.md":       {`"-soil" ` + part, `single hyphens: "soil"`},
		"guides//soil.md":       {`"" ` + part, "small letters"},
		".md":                   {`"" ` + part, "small letters"},
		"guides/../soil.md":     {dot, `only a language code may stand between dots, as in "soil.es.md"`},
		"guides/soil.v2.md":     {dot, "use a hyphen in place of the dot"},
		"guides/soil.es.fr.md":  {dot, "use a hyphen in place of the dot"},
		"guides/soil.txt":       {"is not the name of a page", `end it with ".md"`},
		"guides/index.md":       {`a page cannot be named "index"`, "name it after what it is about"},
		"guide/soil.md":         {away, `move it to the folder "guides"`},
		"soil.md":               {away, any},
		"guides.md":             {away, any},
		"weather/home.md":       {away, any},
	} {
		_, err := AddressOf("content/" + path)
		var bad *AddressError
		if !errors.As(err, &bad) || !strings.Contains(bad.Text, want.text) || !strings.Contains(bad.Note, want.note) {
			t.Errorf("%s: %v, want %+v", path, err, want)
		}
	}
}

// sites is every sort of address, each of one string.
var sites = []string{"content/home.md", "content/home.es.md", "content/guides/soil.md", "content/guides/soil.es.md",
	"content/guides/water.md", "content/courses/young.md", "content/courses/young/soil.md", "content/manual/young.md"}

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
	a, err := AddressOf(path)
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
	site := []string{"en", "es"}
	for _, test := range []struct{ file, said, want string }{
		{"", "", ""},
		{"", "en", ""},
		{"es", "", ""},
		{"es", "es", ""},
		{"", "es", `the page says its language is "es", its file name says "en"`},
		{"es", "en", `the page says its language is "en", its file name says "es"`},
		{"en", "en", `"en" is the site's main language, and its pages have no code in their name`},
		{"fr", "fr", `the site has no language "fr"`},
	} {
		src := &message.Source{Name: "a.md", Text: []byte("---\nlanguage: " + test.said)}
		m := Metadata{Language: test.said, Places: Places{Language: message.Span{Start: 14, End: 16}}}
		l := CheckLanguage(src, Address{kind.Guide, test.file, "guides/soil"}, m, site)
		got := ""
		if len(l) > 0 {
			got = l[0].Text
			if l[0].Span != m.Places.Language || l[0].Source != src || l[0].Note == "" {
				t.Errorf("message %+v", l[0])
			}
		}
		if got != test.want {
			t.Errorf("file %q, page %q: %q, want %q", test.file, test.said, got, test.want)
		}
	}
}
