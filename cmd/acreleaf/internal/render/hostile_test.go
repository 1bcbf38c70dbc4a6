package render_test

import (
	"bytes"
	"fmt"
	"html/template"
	"reflect"
	"slices"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/render"
)

const hostile = `"'><script>alert(1)</script><img src=x onerror=alert(1)> style="x" & {{.}} ` + "\x00\xff</title>"

// TestHostileText puts hostile text in every string of every view. The tags and attributes must stay those of a
// harmless text: nothing gets out of its text or its quotes.
func TestHostileText(t *testing.T) {
	for name, write := range everyView {
		t.Run(name, func(t *testing.T) {
			harmless, hostiles := shape(t, write("harmless")), shape(t, write(hostile))
			if !slices.Equal(harmless, hostiles) {
				t.Errorf("the markup changed:\n%q\nwith harmless text:\n%q", hostiles, harmless)
			}
		})
	}
}

// shape lists the names of the tags and of their attributes, in order.
func shape(t *testing.T, html []byte) []string {
	tags, texts := scan(t, html)
	var names []string
	for _, one := range tags {
		names = append(names, one.name)
		for _, a := range one.attributes {
			names = append(names, one.name+"."+a.name)
		}
	}
	for _, text := range texts {
		if strings.ContainsAny(text, ">\x00") {
			t.Errorf("a bare > or NUL in the text %q", text)
		}
	}
	return names
}

// everyView writes every kind of view with the same text in all of its strings.
var everyView = map[string]func(text string) []byte{
	"guide": writer(guide("")), "home": writer(homePage()), "sources": writer(sourcesPage()),
	"missing": writer(missingPage()), "index": writer(indexPage()),
	"worksheet": writer(soil()), "linked": writer(season()),
	"reckoner": writer(reckoner()), "reference": writer(materials()), "calculation": writer(calculationPage()),
	"drawing": writeDrawing,
	"worked":  writer(&render.Worked{Href: "#x", Text: "x"}),
	"follows": writer(twoKinds()),
	"own":     writer(&render.Own{Label: "x", Shown: render.Shown{Text: "x", Before: "x", After: "x"}}),
	"sourced": writer(&render.Sourced{Text: "x", Source: "x", For: "x", Kind: "x"}),
	"record":  writer(&render.Recorded{Text: "x", What: "x", Day: "x"}),
	"size":    writer(new("x")),
}

func writer(view any) func(string) []byte {
	return func(text string) []byte {
		facts := site()
		fill(reflect.ValueOf(&facts).Elem(), text)
		facts.Language, facts.Base = "en", "https://example.org/"
		fill(reflect.ValueOf(view).Elem(), text)
		var w bytes.Buffer
		r, err := render.New(themeFiles, facts)
		if err != nil {
			panic(err)
		}
		write(r, &w, view)
		return w.Bytes()
	}
}

func write(r *render.Renderer, w *bytes.Buffer, view any) {
	switch v := view.(type) {
	case *render.Guide:
		r.Guide(w, v)
	case *render.Home:
		r.Home(w, v)
	case *render.Sources:
		r.Sources(w, v)
	case *render.Calculation:
		r.Calculation(w, v)
	case *render.Index:
		r.Index(w, v)
	case *render.Missing:
		r.Missing(w, v)
	case *render.Worksheet:
		r.Worksheet(w, v)
	case *render.Table:
		r.Reckoner(w, v)
	case *render.ReferenceTable:
		r.ReferenceTable(w, v)
	case *render.Worked:
		r.Worked(w, v)
	case *render.Following:
		r.Following(w, v)
	case *render.Own:
		r.OwnNote(w, []render.Own{*v})
	case *render.Sourced:
		r.Sourced(w, v)
		r.SourceNote(w, v)
	case *render.Recorded:
		r.Recorded(w, v)
		r.RecordNote(w, v)
	case *string:
		r.Size(w, *v)
	default:
		panic(fmt.Sprintf("nothing writes a %T", view))
	}
}

var trusted = reflect.TypeFor[template.HTML]()

// fill puts the text in every string below v that is not empty, but for HTML that is taken as it is and the names of
// kinds.
func fill(v reflect.Value, text string) {
	switch v.Kind() {
	case reflect.String:
		given := v.String() == render.KindChoice || v.String() == render.KindLinked || v.String() == render.KindNumber
		if v.Type() != trusted && v.String() != "" && !given {
			v.SetString(text)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i), text)
		}
	case reflect.Slice:
		if v.Type() == reflect.TypeFor[[]byte]() {
			v.SetBytes([]byte(`{"name":"` + strings.ReplaceAll(text, `"`, `\"`) + `"}`))
			return
		}
		for i := range v.Len() {
			fill(v.Index(i), text)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			fill(v.Elem(), text)
		}
	}
}

// TestWays holds every href to a way inside the site or an address that only shows something.
func TestWays(t *testing.T) {
	for href, want := range map[string]string{
		"../water/": "../water/", "#soil": "#soil", "./": "./", "": "",
		"https://example.org/a?b=c:d": "https://example.org/a?b=c:d",
		"mailto:a@example.org":        "mailto:a@example.org", "tel:555": "tel:555", "soil/?at=10:30": "soil/?at=10:30",
		"javascript:alert(1)": "#", "JavaScript:alert(1)": "#", "java\tscript:alert(1)": "#", "data:text/html,x": "#",
		"vbscript:x": "#", "//evil.example/": "#", `\\evil.example`: "#", "file:///etc/passwd": "#", "\x01javascript:x": "#",
	} {
		var w bytes.Buffer
		renderer(t, site()).Worked(&w, &render.Worked{Href: href})
		tags, _ := scan(t, w.Bytes())
		if got, _ := tags[0].value("href"); got != want {
			t.Errorf("href %q is written as %q, want %q", href, got, want)
		}
	}
}
