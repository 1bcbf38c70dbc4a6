package draft

import (
	"embed"
	"fmt"
	"io/fs"
	"math"
	"path"
	"slices"
	"strconv"
	"strings"
	"time"

	"acreleaf/calc/prose"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/proof"
)

// The patterns: a folder for each language that has any, and the small site. What is in {{braces}} is filled in.
//
//go:embed patterns
var patterns embed.FS

// patternLanguage is the language of the patterns for pages in a language.
func patternLanguage(code string) string {
	if _, err := fs.Stat(patterns, path.Join("patterns", code)); err == nil {
		return code
	}
	return "en"
}

// fill makes a page from the pattern of its kind.
func (d *drafter) fill() (string, error) {
	name := d.address.Kind.Row().Pattern
	if d.address.Kind == kind.Home {
		return "", noHome(d.called(d.name))
	}
	if d.address.Kind == kind.Course {
		return "", noCourse(d.called(d.name))
	}
	if name == "" {
		return "", &Error{Text: fmt.Sprintf("there is no pattern for %q", d.name),
			Note: eachKind(path.Base(d.name))}
	}
	language := d.code
	pattern, err := fs.ReadFile(patterns, path.Join("patterns", patternLanguage(language), name))
	if err != nil {
		return "", err
	}
	title := d.title(language)
	var names []string
	for _, s := range d.With {
		names = append(names, s.Name)
	}
	worked, err := d.worksheets(sentencesOf(language))
	if err != nil {
		return "", err
	}
	warnings := strings.Join(proof.Warnings(language, title, names), "\n\n")
	if warnings != "" {
		warnings += "\n\n"
	}
	return strings.NewReplacer(
		"{{title}}", scalar(title),
		"{{language}}", language,
		"{{today}}", d.Today.Format(time.DateOnly),
		"{{order}}", strconv.Itoa(d.order()),
		"{{glance}}\n", d.glance(),
		"{{warnings}}\n", warnings,
		"{{worksheets}}", strings.TrimSpace(worked),
	).Replace(string(pattern)), nil
}

// title makes a title of the page's name. A name that is an amount, such as "48-lb", would be a number without a source
// in it.
func (d *drafter) title(language string) string {
	words := strings.ReplaceAll(path.Base(d.address.Name), "-", " ")
	title := strings.ToUpper(words[:1]) + words[1:]
	if len(prose.For(language).Find(title)) > 0 {
		return sentencesOf(language).title
	}
	return title
}

// notTexts are the words that YAML takes for something else than a text, as it is or as some readers have it.
var notTexts = []string{"true", "false", "null", "yes", "no", "on", "off", "y", "n"}

// scalar is a title as a value of YAML. It begins with a letter or a digit, and has no sign in it.
func scalar(title string) string {
	if title[0] <= '9' || slices.Contains(notTexts, strings.ToLower(title)) {
		return strconv.Quote(title)
	}
	return title
}

// order is the first whole number after the orders of the pages of this kind.
func (d *drafter) order() int {
	last := 0.0
	d.pages(func(_ string, a page.Address, m page.Metadata) {
		if a.Kind == d.address.Kind && a.Course() == d.address.Course() && m.Ordered {
			last = max(last, m.Order)
		}
	})
	return int(min(math.Floor(last), math.MaxInt32)) + 1
}

// pages visits the head of every page that can be read.
func (d *drafter) pages(visit func(string, page.Address, page.Metadata)) {
	// What cannot be read has no order that counts, and a proof reports it.
	_ = fs.WalkDir(d.Content, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return nil
		}
		if path.Ext(name) != ".md" {
			return nil
		}
		src, faults := page.Load(d.Content, name)
		if message.HasFault(faults) {
			return nil
		}
		metadata, _, _ := page.Split(src)
		if address, err := page.AddressOf(name, metadata, d.site.Languages[0]); err == nil {
			visit(name, address, metadata)
		}
		return nil
	})
}

// glance is the line of metadata with the first answer of each calculation, if there are any.
func (d *drafter) glance() string {
	var figures []string
	for _, s := range d.With {
		if e, err := exampleOf(s); err == nil {
			figures = append(figures, s.Name+"."+e.outcome.Answers()[0].Name)
		}
	}
	if len(figures) == 0 {
		return ""
	}
	return "glance: [" + strings.Join(figures[:min(len(figures), mostAtAGlance)], ", ") + "]\n"
}

// mostAtAGlance keeps the line at the top of a page one that can be read at a glance.
const mostAtAGlance = 3

// sentencesOf are the sentences around worksheets, in the language of the patterns.
func sentencesOf(language string) sentences {
	return allSentences[patternLanguage(language)]
}
