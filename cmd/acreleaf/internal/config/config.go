// Package config reads the files that say who signs a site and what its figures rest on.
//
// It owns site.yaml, sources.yaml and the reading of small YAML tables with the place of every key and value, which
// page metadata uses too. It must not know of pages, of worksheets or of what a site is made into.
package config

import (
	"fmt"
	"io/fs"
	"net/url"
	"regexp"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Site is what site.yaml says. Texts are single lines of plain text, empty when left out.
type Site struct {
	Office    string   // who signs the guides; always there
	Languages []string // codes of the site's languages, the main one first; never empty
	Address   string   // where the site will stand, with a slash at its end; empty when it is not known
	Licence   string
	Contact   Contact
	Invented  bool               // people, places and numbers are made up, and every page says so with Texts.Notice
	Texts                        // in the main language
	Others    map[string]Texts   // in other languages, where the site file has them
	Reading   map[string]float64 // how hard a text may be to read, by language, where the site says so
	Hazards   []OwnHazard        // that the table of the calculations does not have
	See       map[string][]See   // words of the index that lead to others, by language
}

// Contact says how a reader reaches the office, beside the name of who answers, which is in Texts.
type Contact struct{ Email, Phone string }

var siteKeys = []string{"office", "crop", "tagline", "language", "address", "licence", "contact", "local-rule",
	"invented", "notice", "reading", "hazards", "see"}

var contactKeys = []string{"name", "email", "phone"}

// Load reads a site file. The source is never nil; the site is whole only when no message is a fault.
func Load(fsys fs.FS, name string) (Site, *message.Source, message.List) {
	src, faults := message.Load(fsys, name)
	if message.HasFault(faults) {
		return Site{Languages: []string{defaultLanguage}}, src, faults
	}
	t := ReadTable(src, message.Span{Start: 0, End: len(src.Text)}, "the site file", siteKeys)
	site := Site{
		Office:    t.Need("office", "type the name of your office: \"office: Sorrel Flat Orchard Office\""),
		Languages: languages(t),
		Address:   siteAddress(t),
		Licence:   t.Text("licence"),
		Invented:  t.Bool("invented"),
		Reading:   readingLimits(t),
	}
	site.Hazards = readHazards(t, site.Languages)
	site.See = readSees(t, site.Languages)
	c := t.Table("contact", "the contact", contactKeys)
	if c != nil {
		site.Contact = Contact{c.Text("email"), c.Text("phone")}
	}
	site.readTexts(t, c)
	if site.Invented && site.Notice == "" {
		t.Fault("invented", "notice-missing", "the site says it is invented, and has no notice that says so to readers",
			"add a line \"notice: ...\" with a sentence that every page will show")
	}
	return site, src, t.Messages()
}

const defaultLanguage = "en"

var languageCode = regexp.MustCompile(`^[a-z]{2,3}$`)

// IsLanguage says whether a text has the form of a language code: two or three small letters.
func IsLanguage(code string) bool { return languageCode.MatchString(code) }

func languages(t *Table) []string {
	var codes []string
	for _, v := range t.List("language") {
		switch {
		case !IsLanguage(v.Text):
			t.FaultAt(v.Span, "language-code", fmt.Sprintf("%q is not a language code", v.Text),
				"type two small letters, as in \"language: en\" or \"language: [en, es]\"")
		case slices.Contains(codes, v.Text):
			t.FaultAt(v.Span, "language-twice", fmt.Sprintf("the language %q is listed twice", v.Text),
				"take one of the two out")
		default:
			codes = append(codes, v.Text)
		}
	}
	if len(codes) == 0 {
		return []string{defaultLanguage}
	}
	return codes
}

// siteAddress is the base address with a slash at its end.
func siteAddress(t *Table) string {
	text := t.Text("address")
	if text == "" {
		return ""
	}
	u, fault := webAddress(text)
	if fault == "" && strings.ContainsAny(text, "?#") {
		fault = "has a part after ? or #"
	}
	if fault != "" {
		t.Fault("address", "address", fmt.Sprintf("the address %q %s", text, fault),
			"type the address of the home page, as in \"address: https://guides.example.org/walnuts/\", "+
				"or take the line out")
		return ""
	}
	return strings.TrimRight(u.String(), "/") + "/"
}

// webAddress reads an address that a reader can follow, or says what is wrong with it.
func webAddress(text string) (*url.URL, string) {
	u, err := url.Parse(text)
	switch {
	case err != nil:
		return nil, "cannot be read"
	case u.Scheme != "https" && u.Scheme != "http":
		return nil, "does not begin with https:// or http://"
	case u.Hostname() == "":
		return nil, "has no host name"
	case u.User != nil:
		return nil, "has a user name in it"
	case strings.Contains(text, " "):
		return nil, "has a space in it"
	}
	return u, ""
}

// SiteKeys lists the keys of site.yaml, and ContactKeys those of the contact in it.
func SiteKeys() []string    { return slices.Clone(siteKeys) }
func ContactKeys() []string { return slices.Clone(contactKeys) }
