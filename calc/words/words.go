package words

import (
	"embed"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"
)

// English is the language that is complete.
const English = "en"

// The files of each language that are of no single calculation.
const (
	shared  = "shared"
	general = "general"
	hazards = "hazards" // of calc/fact, by their ids
	sources = "sources" // the notes of the bibliography, by id

	practice = "practice" // the sentences that mark an answer to an exercise
	block    = "block"    // what is known of a block, by the ids of calc.BlockFacts
)

//go:embed en es
var embedded embed.FS

// A library is the files by language and then by calculation.
type library map[string]map[string]file

// texts is what comes with the program. It is read once, and a file that cannot be read is a mistake in this program.
var texts = sync.OnceValue(func() library {
	all := library{}
	names, err := fs.Glob(embedded, "*/*.txt")
	if err != nil {
		panic(err)
	}
	for _, name := range names {
		content, err := embedded.ReadFile(name)
		if err != nil {
			panic(err)
		}
		f, err := read(string(content))
		if err != nil {
			panic(fmt.Errorf("calc/words/%s: %w", name, err))
		}
		language := path.Dir(name)
		if all[language] == nil {
			all[language] = map[string]file{}
		}
		all[language][strings.TrimSuffix(path.Base(name), ".txt")] = f
	}
	for language, files := range all {
		for name, f := range files {
			if err := f.follow(files); err != nil {
				panic(fmt.Errorf("calc/words/%s/%s.txt: %w", language, name, err))
			}
		}
	}
	return all
})

// Languages lists the languages that there are texts in.
func Languages() []string { return slices.Sorted(maps.Keys(texts())) }

// Language is the one of Languages that a tag such as "es-MX" asks for: English where there is no other.
func Language(tag string) string {
	primary, _, _ := strings.Cut(strings.ToLower(tag), "-")
	if texts()[primary] == nil {
		return English
	}
	return primary
}

// Calculations lists the files of calculations in a language.
func Calculations(language string) []string {
	return slices.DeleteFunc(slices.Sorted(maps.Keys(texts()[language])), func(name string) bool {
		return name == shared || name == general || name == hazards || name == sources || name == practice ||
			name == block
	})
}

// Texts are the texts of one calculation in one language.
type Texts struct {
	Language string

	library     library
	calculation string
	asked       map[Key]bool
}

// A Key is a text's place: the file, without its language and its ending, and the key in it.
type Key struct{ File, Key string }

func (k Key) String() string { return k.File + ".txt: " + k.Key }

// Of are the texts of a calculation in a language.
func Of(calculation, language string) *Texts {
	return &Texts{
		Language: Language(language), library: texts(), calculation: calculation, asked: map[Key]bool{},
	}
}

// Find is the text of a key: that of the calculation, or else the one that calculations share. Where the language lacks
// what English has, it is the English text, and foreign is set.
func (t *Texts) Find(key string) (text string, foreign, ok bool) {
	for _, language := range []string{English, t.Language} {
		for _, file := range []string{t.calculation, shared} {
			if _, there := t.library[language][file][key]; !there {
				continue
			}
			t.asked[Key{file, key}] = true
			if e, told := t.library[t.Language][file][key]; told {
				return e.text, false, true
			}
			return t.library[English][file][key].text, true, true
		}
	}
	return "", false, false
}

// Asked lists what was found.
func (t *Texts) Asked() map[Key]bool { return maps.Clone(t.asked) }

// Keys lists every key of a language's files but general.txt, which nobody but this package reads.
func Keys(language string) []Key {
	return texts().keys(language, func(name, _ string) bool { return name != general })
}

// A Place is the line of a file where a text begins. A text for several parts of a sheet has one place.
type Place struct {
	File string
	Line int
}

// Text is a text of a language, and its place. Same is set for one that only names the key of another.
func Text(language string, key Key) (text string, at Place, same bool) {
	e := texts()[language][key.File][key.Key]
	return e.text, Place{key.File, e.line}, e.same
}

// Untranslated lists what English has and a language lacks.
func Untranslated(language string) []Key {
	return texts().keys(English, func(name, key string) bool {
		_, told := texts()[language][name][key]
		return !told
	})
}

// keys lists the keys of a language that are wanted, in order.
func (l library) keys(language string, wanted func(name, key string) bool) []Key {
	var keys []Key
	for name, f := range l[language] {
		for key := range f {
			if wanted(name, key) {
				keys = append(keys, Key{name, key})
			}
		}
	}
	slices.SortFunc(keys, func(a, b Key) int { return strings.Compare(a.String(), b.String()) })
	return keys
}
