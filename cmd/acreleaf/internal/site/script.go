package site

import (
	"sync"

	"acreleaf/cmd/acreleaf/internal/assets"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/wire"
	"acreleaf/theme"
)

// A worded is the scripts of a page with the words of a language: the one that makes a page live, and the one that
// comes after.
type worded struct{ page, after output.File }

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
		byLanguage[language] = worded{with(made.Script, wire.WordsOfPage), with(made.After, wire.WordsOfAfter)}
	}
	return byLanguage
})
