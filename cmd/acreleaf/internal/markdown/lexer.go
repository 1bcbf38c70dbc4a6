package markdown

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/alecthomas/chroma/v2"
	"github.com/alecthomas/chroma/v2/lexers"
)

// languages are those that listings are highlighted in, by chroma's names. chroma has hundreds; some of their lexers
// take minutes over a short text, so that only lexers that the tests know to be quick are used.
var languages = []string{"bash", "css", "diff", "go", "html", "javascript", "json", "markdown", "python", "r", "toml",
	"typescript", "xml", "yaml"}

// lexersByName holds the lexers of the languages by every word that authors use for them: name, alias, or ending of a
// file. They find each other in a registry of their own, so that no other lexer works on a part of a listing.
var lexersByName = sync.OnceValue(func() map[string]chroma.Lexer {
	m := map[string]chroma.Lexer{}
	registry := chroma.NewLexerRegistry()
	for _, language := range languages {
		lexer := registry.Register(untimed(regexLexer(lexers.Get(language))))
		config := lexer.Config()
		for _, name := range slices.Concat(config.Aliases, []string{config.Name}) {
			m[strings.ToLower(name)] = lexer
		}
		for _, pattern := range config.Filenames {
			if ending, ok := strings.CutPrefix(pattern, "*."); ok {
				m[ending] = lexer
			}
		}
	}
	return m
})

// lexerOf finds the lexer of a language; nil when there is none.
func lexerOf(language string) chroma.Lexer { return lexersByName()[strings.ToLower(language)] }

// regexLexer is the lexer itself, out of what chroma puts around it: around Markdown's, something that gives the
// metadata of a page to a timed lexer; see printer.written.
func regexLexer(lexer chroma.Lexer) *chroma.RegexLexer {
	if inner, ok := lexer.(*chroma.RegexLexer); ok {
		return inner
	}
	return reflect.ValueOf(lexer).Elem().FieldByName("Lexer").Interface().(*chroma.RegexLexer)
}

// untimed is a lexer with the same rules and no clock. chroma gives a pattern 250 ms and then takes it for one that
// does not match, so that a press which the machine holds up for a moment colours a listing otherwise than the next.
// What bounds the work here is the size of a listing (listingLimit, lineLimit), and that no pattern of these few
// lexers runs away: those that did are fixed, and the tests try every one.
func untimed(lexer *chroma.RegexLexer) chroma.Lexer {
	return chroma.MustNewLexer(lexer.Config(), func() chroma.Rules {
		rules := lexer.MustRules().Clone()
		for _, list := range rules {
			for i := range list {
				list[i].Pattern = steady.Replace(list[i].Pattern)
			}
		}
		rules[unclockState] = []chroma.Rule{{Mutator: unclock{}}}
		return rules
	})
}

// steady fixes the patterns of quoted texts that take a backslash in two ways, so that their work would double with
// every backslash of a text without an end: once a way is taken (?>), the pattern does not come back to it.
var steady = strings.NewReplacer(
	`(\\\\|\\"|[^"])*`, `((?>\\\\|\\"|[^"]))*`,
	`(\\\\|\\'|[^'])*`, `((?>\\\\|\\'|[^']))*`,
	`(?:\\.|[^"])*`, `(?>\\.|[^"])*`,
	`(?:\\.|[^'])*`, `(?>\\.|[^'])*`,
	`(\\\\|\\[0-7]+|\\.|[^"\\$])*`, `((?>\\\\|\\[0-7]+|\\.|[^"\\$]))*`,
	`(\\\\|\\[0-7]+|\\.|[^'\\])*`, `((?>\\\\|\\[0-7]+|\\.|[^'\\]))*`,
)

const unclockState = "unclock" // no rule leads to it

// unclock takes the limit of time from the patterns of a lexer when they are compiled, and then its own state.
type unclock struct{}

func (unclock) Mutate(*chroma.LexerState) error { return nil }

func (unclock) MutateLexer(rules chroma.CompiledRules, state string, _ int) error {
	for _, list := range rules {
		for _, rule := range list {
			rule.Regexp.MatchTimeout = forever
		}
	}
	delete(rules, state)
	return nil
}

const forever = time.Duration(math.MaxInt64) // the patterns then look at no clock at all
