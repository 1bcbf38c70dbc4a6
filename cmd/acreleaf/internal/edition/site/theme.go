package site

import (
	"cmp"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"

	"acreleaf/cmd/acreleaf/internal/assets"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/drawing"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/wire"
	"acreleaf/theme"
)

// bundle builds the theme once a process: the theme is part of the program.
var bundle = sync.OnceValues(func() (assets.Bundle, message.List) { return assets.Build(theme.Files) })

// Opener is the script of a file that has all pages of a site.
func Opener() output.File {
	built, _ := bundle()
	return built.Opener
}

// A worded is the scripts of a page with the words of a language: the one that makes a page live, the one that comes
// after, the one that takes the page along, the one for exercises, that of the leader's page, that of courses, those of
// blocks and drawings, the one that keeps pages on the device, and the one that finds a word in the index of terms.
type worded struct{ page, after, paper, practice, wall, course, block, blocks, drawing, offline, find output.File }

// scripts gives the scripts by language. They are made once a process, as the bundle is.
var scripts = sync.OnceValue(func() map[string]worded {
	made, _ := bundle()
	byLanguage := map[string]worded{}
	for _, language := range languagesOfTheme() {
		with := func(script output.File, names []wire.Word) output.File {
			words, err := render.ScriptWords(theme.Files, language, names)
			if err != nil {
				panic(err) // the theme is part of the program
			}
			return assets.Worded(script, language, words)
		}
		facts := factsOfBlocks(language)
		byLanguage[language] = worded{with(made.Script, wire.WordsOfPage), with(made.After, wire.WordsOfAfter),
			with(made.Paper, wire.WordsOfPaper), with(made.Practice, wire.WordsOfPractice), with(made.Wall, wire.WordsOfWall),
			with(made.Course, wire.WordsOfCourse),
			assets.With(with(made.Block, wire.WordsOfBlock), language, "facts", facts),
			assets.With(with(made.Blocks, wire.WordsOfBlocks), language, "facts", facts),
			assets.With(with(made.Drawing, wire.WordsOfDrawing), language, "rules", drawing.JSON()),
			with(made.Offline, wire.WordsOfOffline), with(made.Find, wire.WordsOfFind)}
	}
	return byLanguage
})

// languagesOfTheme lists the languages that the theme has interface words for.
func languagesOfTheme() []string {
	names, err := fs.Glob(theme.Files, "words/*.yaml")
	if err != nil {
		panic(err) // the pattern is wrong
	}
	for i, name := range names {
		names[i] = strings.TrimSuffix(path.Base(name), ".yaml")
	}
	return names
}

// made has the last renderer of each language. Editions that differ in their sources alone share it.
var made struct {
	sync.Mutex
	views     map[string]render.Site
	renderers map[string]*render.Renderer
}

// renderersOf are what set the pages of a site, by language.
func renderersOf(of *config.Site) map[string]*render.Renderer {
	made.Lock()
	defer made.Unlock()
	if made.views == nil {
		made.views, made.renderers = map[string]render.Site{}, map[string]*render.Renderer{}
	}
	known, list := languagesOfTheme(), map[string]*render.Renderer{}
	for _, language := range of.Languages {
		if !slices.Contains(known, language) {
			continue // Check says so, and no page of it is made
		}
		if view := siteView(of, language); made.renderers[language] == nil || made.views[language] != view {
			r, err := render.New(theme.Files, view)
			if err != nil {
				panic(err) // the theme is part of the program
			}
			made.views[language], made.renderers[language] = view, r
		}
		list[language] = made.renderers[language]
	}
	return list
}

// siteView is what every page of a language states about the site.
func siteView(of *config.Site, language string) render.Site {
	built, _ := bundle()
	said := of.In(language)
	s := render.Site{
		Language: language, Office: of.Office, Crop: said.Crop, Tagline: said.Tagline,
		Invented: of.Invented, Notice: said.Notice, Base: of.Address,
		Licence: of.Licence, LocalRule: said.LocalRule,
		Contact: cmp.Or(said.Contact, of.Contact.Email, of.Contact.Phone),
		Style:   built.Style.Path, Ranges: built.Ranges.Path,
		Icon: built.Icon.Path, CardStyle: built.PracticeStyle.Path, CourseStyle: built.CourseStyle.Path,
		WallStyle: built.WallStyle.Path, BlockStyle: built.BlockStyle.Path,
		DrawingStyle: built.DrawingStyle.Path,
	}
	if len(of.Languages) > 1 {
		s.LanguageScript = built.Language.Path
	}
	if of.Address != "" {
		s.Card = card().Path
	}
	worded := scripts()[language]
	s.Script, s.After, s.Paper, s.Practice = worded.page.Path, worded.after.Path, worded.paper.Path, worded.practice.Path
	s.Wall, s.CourseScript, s.BlockScript = worded.wall.Path, worded.course.Path, worded.block.Path
	s.BlocksScript, s.DrawingScript = worded.blocks.Path, worded.drawing.Path
	s.Offline, s.Find = worded.offline.Path, worded.find.Path
	switch {
	case of.Contact.Email != "":
		s.ContactHref = "mailto:" + of.Contact.Email
	case of.Contact.Phone != "":
		s.ContactHref = "tel:" + strings.ReplaceAll(of.Contact.Phone, " ", "-")
	}
	return s
}
