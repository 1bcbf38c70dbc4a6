package site

import (
	"encoding/json"
	"net/url"
	"slices"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/config"
)

func TestManifests(t *testing.T) {
	e := &edition{Settings: &book.Settings{Site: config.Site{Office: "Sorrel Flat Orchard Office",
		Languages: []string{"en", "es"}}}}
	var paths []string
	for _, f := range icons() {
		paths = append(paths, f.Path)
	}
	for i, f := range e.manifests() {
		var m manifest
		if err := json.Unmarshal(f.Bytes, &m); err != nil {
			t.Fatal(err)
		}
		// The members that a browser needs to install a site, W3C, Web Application Manifest.
		at, _ := url.Parse("https://guides.example.org/walnuts/" + f.Path)
		ref := func(way string) string {
			to, err := at.Parse(way)
			if err != nil {
				t.Fatal(err)
			}
			return to.String()
		}
		root := "https://guides.example.org/walnuts/"
		if want := root + []string{"", "es/"}[i]; ref(m.Start) != want || ref(m.Scope) != root {
			t.Errorf("%s starts at %s, and has the scope %s", f.Path, ref(m.Start), ref(m.Scope))
		}
		if m.Language != e.Site.Languages[i] || m.Name != e.Site.Office || m.Short != "Sorrel Flat" {
			t.Errorf("%s has %+v", f.Path, m)
		}
		var sizes []string
		for _, icon := range m.Icons {
			sizes = append(sizes, icon.Sizes+icon.Purpose)
			if path := strings.TrimPrefix(ref(icon.Source), root); !slices.Contains(paths, path) {
				t.Errorf("%s leads to the icon %s, and there are %v", f.Path, path, paths)
			}
		}
		if !slices.Equal(sizes, []string{"192x192", "512x512", "512x512maskable"}) {
			t.Errorf("%s has icons of %v", f.Path, sizes)
		}
	}
}

func TestShortName(t *testing.T) {
	for name, want := range map[string]string{"Sorrel Flat Orchard Office": "Sorrel Flat", "Office": "Office",
		"Extraordinarily long": "Extraordinarily", "Oficina de Huertos": "Oficina"} {
		if got := shortName(name); got != want {
			t.Errorf("%q is %q, not %q", name, got, want)
		}
	}
}
