// Package terms makes an index of terms, as books have one at their back: words in the order of the alphabet of their
// language, each with the places it leads to, words below it, and other words to see.
//
// It owns the order, what counts as the same word, and the letters above the words. It must not know what a place is,
// or how an index is printed: a place is a number of whoever asks.
package terms

import (
	"cmp"
	"iter"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/collate"
	"golang.org/x/text/language"
	"golang.org/x/text/unicode/norm"
)

// An Item is a word that leads to a place.
type Item struct {
	Text  string
	Under string // what is more narrow, below the word: "in a well"; empty for none
	Place int
}

// A See is a word that leads to other words.
type See struct {
	Word string
	To   []string
}

// An Entry is a word of an index.
type Entry struct {
	Text   string
	Places []int
	More   int // how many places there are beyond those
	Under  []*Entry
	See    []*Entry // of the index, too; "see also" where the entry has places
	key    string
}

// A Letter is the words that begin with it. Those that begin with a digit or a sign are below the empty letter.
type Letter struct {
	Head    string
	Entries []*Entry
}

// MostPlaces is how many places a word has. A reader who gets more must search again.
const MostPlaces = 12

// Key is the same for words that differ in capitals and spaces alone.
func Key(word string) string {
	return norm.NFC.String(strings.ToLower(strings.Join(strings.Fields(word), " ")))
}

// Known gives the words that have an entry, by their keys.
func Known(items iter.Seq[Item]) map[string]bool {
	known, seen := map[string]bool{}, map[string]bool{}
	for i := range items {
		if !seen[i.Text] { // most words come on many pages
			seen[i.Text], known[Key(i.Text)] = true, true
		}
	}
	return known
}

// Make puts an index in the order of a language. A word that comes more than once is written as it was the first time.
// A See to a word that has no entry is left out.
func Make(code string, items iter.Seq[Item], sees []See) []Letter {
	m := &maker{written: map[string]*Entry{}, top: map[string]*Entry{}, under: map[*Entry]map[string]*Entry{}}
	for i := range items {
		e := m.entry(i.Text)
		if i.Under != "" {
			e = m.below(e, i.Under)
		}
		e.add(i.Place)
	}
	for _, s := range sees {
		m.entry(s.Word)
	}
	for _, s := range sees {
		e := m.entry(s.Word)
		for _, to := range s.To {
			if other := m.top[Key(to)]; other != nil && other != e && !slices.Contains(e.See, other) {
				e.See = append(e.See, other)
			}
		}
	}
	base, _, _ := strings.Cut(code, "-")
	m.articles = articles[base]
	return m.letters(collate.New(language.Make(code)), collate.New(language.Make(code), collate.Loose))
}

// articles are passed over at the beginning of an entry, by language: "the season" is at S, and is written in full.
var articles = map[string][]string{
	"en": {"the", "a", "an"},
	"es": {"el", "la", "los", "las", "un", "una", "unos", "unas"},
}

type maker struct {
	articles []string
	written  map[string]*Entry // by their words as they are written: most come on many pages
	top      map[string]*Entry // by their keys
	under    map[*Entry]map[string]*Entry
}

func (m *maker) entry(text string) *Entry {
	if known := m.written[text]; known != nil {
		return known
	}
	key := Key(text)
	if m.top[key] == nil {
		m.top[key] = &Entry{Text: text, key: key}
	}
	m.written[text] = m.top[key]
	return m.top[key]
}

func (m *maker) below(e *Entry, text string) *Entry {
	if m.under[e] == nil {
		m.under[e] = map[string]*Entry{}
	}
	key := Key(text)
	if m.under[e][key] == nil {
		m.under[e][key] = &Entry{Text: text, key: key}
		e.Under = append(e.Under, m.under[e][key])
	}
	return m.under[e][key]
}

func (e *Entry) add(place int) {
	switch {
	case slices.Contains(e.Places, place):
	case len(e.Places) == MostPlaces:
		e.More++
	default:
		e.Places = append(e.Places, place)
	}
}

// letters sorts the entries, and parts them by the letters that they begin with.
func (m *maker) letters(order, loose *collate.Collator) []Letter {
	all := make([]*Entry, 0, len(m.top))
	for _, e := range m.top {
		m.sort(order, e.Under)
		all = append(all, e)
	}
	heads := make(map[*Entry]string, len(all))
	for _, e := range all {
		heads[e] = head(loose, m.plain(e.key))
	}
	m.sort(order, all)
	var letters []Letter
	for _, e := range all {
		if n := len(letters); n == 0 || letters[n-1].Head != heads[e] {
			letters = append(letters, Letter{Head: heads[e]})
		}
		last := &letters[len(letters)-1]
		last.Entries = append(last.Entries, e)
	}
	return letters
}

// sort sorts by letters and digits, whatever signs are before them: "<5" is beside 5.
func (m *maker) sort(order *collate.Collator, list []*Entry) {
	var buffer collate.Buffer
	keys := make(map[*Entry]string, len(list))
	for _, e := range list {
		keys[e] = string(order.KeyFromString(&buffer, m.plain(e.key)))
		buffer.Reset()
	}
	slices.SortFunc(list, func(a, b *Entry) int {
		return cmp.Or(cmp.Compare(keys[a], keys[b]), cmp.Compare(a.key, b.key))
	})
}

// plain is a word from its first letter or digit on, without the article before it.
func (m *maker) plain(key string) string {
	plain := trimmed(key)
	article, rest, _ := strings.Cut(plain, " ")
	if rest = trimmed(rest); rest != "" && slices.Contains(m.articles, article) {
		return rest
	}
	return plain
}

func trimmed(key string) string {
	return strings.TrimLeftFunc(key, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// head is the letter that a word begins with, as its language counts letters: accents do not part words, and Spanish
// has a letter Ñ.
func head(loose *collate.Collator, plain string) string {
	first, _ := utf8.DecodeRuneInString(plain)
	if !unicode.IsLetter(first) {
		return ""
	}
	for letter := 'A'; letter <= 'Z'; letter++ {
		if loose.CompareString(string(first), string(letter)) == 0 {
			return string(letter)
		}
	}
	return string(unicode.ToUpper(first))
}
