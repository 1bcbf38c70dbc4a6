package media

import (
	"fmt"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Each drawing has the id and the place of the message that refuses it, or "" when it is published.
func TestDrawings(t *testing.T) {
	for inside, want := range map[string]string{
		`<rect width="1" height="1"/>`:                                              "",
		`<text x="1" font-family="serif" xml:space="preserve">10 lb</text>`:         "",
		`<g fill="url(#a)" style="stroke:rgb(1,2,3);clip-path:url('#b')"/>`:         "",
		`<style>.a{fill:red} @media print{.a{fill:url(#a)}}</style>`:                "",
		`<use href="#a"/><use xmlns:l="http://www.w3.org/1999/xlink" l:href="#a"/>`: "",
		`<image href="data:image/png;base64,iVBORw0KGgo="/>`:                        "",
		notes: "",
		`<!-- a note --><title>A &amp; B</title>`: "",
		`<g aria-label="Amount(lb)" data-a="b"/>`: "",

		`<script/>`: "svg-element 2:1",
		`<SCRIPT/>`: "svg-element 2:1",
		`<x:script xmlns:x="http://www.w3.org/2000/svg"/>`:                               "svg-element 2:1",
		`<script xmlns="http://www.w3.org/1999/xhtml"/>`:                                 "svg-element 2:1",
		`<g xmlns="http://www.w3.org/1999/xhtml"/>`:                                      "svg-element 2:1",
		`<r:RDF xmlns:r="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><script/></r:RDF>`: "svg-element 2:62",
		`<g>\n<foreignObject/></g>`:                                                      "svg-element 3:1",
		`<animate attributeName="href" to="javascript:1"/>`:                              "svg-element 2:1",
		`<set attributeName="onclick" to="1"/>`:                                          "svg-element 2:1",
		`<a href="javascript:1"/>`:                                                       "svg-element 2:1",
		`<feImage href="#a"/>`:                                                           "svg-element 2:1",
		`<iframe src="a"/>`:                                                              "svg-element 2:1",
		`<g onload="1"/>`:                                                                "svg-attribute 2:1",
		`<g OnLoad="1"/>`:                                                                "svg-attribute 2:1",
		`<g xml:base="http://a/"/>`:                                                      "svg-attribute 2:1",
		`<g src="a"/>`:                                                                   "svg-attribute 2:1",
		`<use href="b.svg#a"/>`:                                                          "svg-reference 2:1",
		`<use href=" #a"/>`:                                                              "svg-reference 2:1",
		`<image href="data:image/svg+xml;base64,PHN2Zz4="/>`:                             "svg-reference 2:1",
		`<image href="//a/b.png"/>`:                                                      "svg-reference 2:1",
		`<use href="data:image/png;base64,AAAA"/>`:                                       "svg-reference 2:1",
		`<g style="fill:url(http://a)"/>`:                                                "svg-style 2:1",
		`<g fill="url( 'http://a' )"/>`:                                                  "svg-style 2:1",
		`<g style="fill:u\\72l(http://a)"/>`:                                             "svg-style 2:1",
		`<style>@import "http://a";</style>`:                                             "svg-style 2:8",
		`<style>@font-face{font-family:a}</style>`:                                       "svg-style 2:8",
		`<style>a{background:image-set("http://a" 1x)}</style>`:                          "svg-style 2:8",
		`<style><![CDATA[a{b:url(//c)}]]></style>`:                                       "svg-style 2:8",
		`<?xml-stylesheet href="a"?>`:                                                    "svg-markup 2:1",
		`<!DOCTYPE a>`:                                                                   "svg-markup 2:1",
		`&nbsp;`:                                                                         "svg-markup 1:41",
		`<g a="1" a="1"></h>`:                                                            "svg-attribute 2:1",
		`<g>`:                                                                            "svg-markup 3:1",
		strings.Repeat("<g>", 64):                                                        "svg-markup 2:190",
		strings.Repeat("<g/>", mostElements):                                             "svg-markup 2:199997",
		doubling(20):                                                                     "svg-markup 1:1",
	} {
		inside = strings.ReplaceAll(inside, `\n`, "\n")
		source := &message.Source{Name: "a.svg", Text: fmt.Appendf(nil, "<svg xmlns=%q>\n%s\n</svg>\n", svgSpace, inside)}
		got := ""
		if said := CheckSVG(source); len(said) > 0 {
			line, column := source.Position(said[0].Span.Start)
			got = fmt.Sprintf("%s %d:%d", said[0].ID, line, column)
		}
		if got != want {
			t.Errorf("%.100s: %q, want %q", inside, got, want)
		}
	}
}

// notes are what a drawing program writes down for itself.
const notes = `<metadata><r:RDF xmlns:r="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><r:a r:resource="http://a"/>` +
	`</r:RDF></metadata>`

// doubling is a drawing in which each part copies the one before it twice.
func doubling(times int) string {
	var b strings.Builder
	b.WriteString(`<g id="p0"><rect/></g>`)
	for i := range times {
		fmt.Fprintf(&b, `<g id="p%d"><use href="#p%d"/><use href="#p%d"/></g>`, i+1, i, i)
	}
	return b.String()
}

// TestBeginnings gives the first bytes of files, and whether a file of that name may begin so.
func TestBeginnings(t *testing.T) {
	html := "<html><script>alert(1)</script>"
	for _, c := range []struct {
		name, head string
		ok         bool
	}{
		{"a.png", "\x89PNG\r\n\x1a\n\x00", true}, {"A.PNG", "\x89PNG\r\n\x1a\n", true}, {"a.jpg", "\xff\xd8\xff\xe0", true},
		{"a.gif", "GIF89a", true}, {"a.webp", "RIFF\x00\x00\x00\x00WEBPVP8 ", true},
		{"a.avif", "\x00\x00\x00 ftypavif", true},
		{"a.pdf", "%PDF-1.7", true}, {"a.csv", "a,b\n1,2\n", true}, {"a.txt", "", true}, {"a.txt", "caf\xe9", true},
		{"a.xlsx", "PK\x03\x04", true}, {"a.mp3", "\xff\xfb\x90", true}, {"a.mp4", "\x00\x00\x00 ftypisom", true},
		{"a.webm", "\x1a\x45\xdf\xa3", true},
		{"a.png", html, false}, {"a.png", "", false}, {"a.jpg", "\x89PNG\r\n\x1a\n", false}, {"a.pdf", " " + html, false},
		{"a.csv", html, false}, {"a.txt", "\n\t <!DOCTYPE html>", false}, {"a.txt", "<?xml version=\"1.0\"?>", false},
		{"a.csv", "<svg onload=alert(1)>", true}, // no browser takes it for a page
		{"a.json", "<!-- --><script>", false}, {"a.epub", "PK\x03\x04", false}, {"a.txt", "a\x00b", false},
		{"a.pdf", html + "%PDF-1.7", false}, {"a.mp3", html, false}, {"a.webp", "RIFF<html>", false},
	} {
		kind, known := Of(c.name)
		if said := kind.CheckHead([]byte(c.head)); !known || (len(said) == 0) != c.ok {
			t.Errorf("%s, %q: %v", c.name, c.head, said)
		}
	}
}

// TestRefused looks at names that have no kind: each has a reason and what to do.
func TestRefused(t *testing.T) {
	for _, name := range []string{"a.html", "a.HTM", "a.xhtml", "a.xml", "a.js", "a.mjs", "a.css", "a.svgz", "a.swf",
		"a.exe", "a.heic", "a.doc", "a", "a.", "a.png.html"} {
		if _, known := Of(name); known {
			t.Errorf("%s is published", name)
		}
		if text, note := Refused(name); text == "" || note == "" {
			t.Errorf("%s: %q, %q", name, text, note)
		}
	}
}
