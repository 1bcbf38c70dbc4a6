package markdown

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/alecthomas/chroma/v2"
)

// TestNoPatternLooksAtAClock asks the compiled rules of every lexer for their limits of time.
func TestNoPatternLooksAtAClock(t *testing.T) {
	for _, language := range languages {
		for state, rules := range compiled(t, language) {
			for _, rule := range rules {
				if rule.Regexp.MatchTimeout != forever {
					t.Errorf("%s, %s: %q has %v", language, state, rule.Pattern, rule.Regexp.MatchTimeout)
				}
			}
		}
	}
}

// TestNoPatternRunsAway gives every pattern that repeats something short texts that make it try one way after another:
// one or two of its own characters again and again, after one that may open something, with an end that fits nothing.
// A pattern whose work doubles with each repetition would take hours over one of them.
func TestNoPatternRunsAway(t *testing.T) {
	tried := map[string]bool{}
	for _, language := range languages {
		for state, rules := range compiled(t, language) {
			for _, rule := range rules {
				if !strings.ContainsAny(rule.Pattern, "*+{") || tried[rule.Pattern] {
					continue
				}
				tried[rule.Pattern] = true
				if text := runaway(rule); text != "" {
					t.Errorf("%s, %s: %q runs away with %q", language, state, rule.Pattern, text)
				}
			}
		}
	}
	if len(tried) < 200 {
		t.Errorf("%d patterns were tried", len(tried))
	}
}

// TestRunawayIsFound tries the search for a runaway on a pattern that is one, and on its fixed form.
func TestRunawayIsFound(t *testing.T) {
	for pattern, want := range map[string]bool{`"(\\\\|\\"|[^"])*"`: true, `"((?>\\\\|\\"|[^"]))*"`: false} {
		lexer := chroma.MustNewLexer(nil, func() chroma.Rules {
			return chroma.Rules{"root": {{Pattern: pattern, Type: chroma.Text}}}
		})
		for _, rule := range probe(t, lexer)["root"] {
			if got := runaway(rule) != ""; rule.Pattern == pattern && got != want {
				t.Errorf("%s: runs away: %v", pattern, got)
			}
		}
	}
}

// compiled gives the rules of a language's lexer, as they are when it is at work.
func compiled(t *testing.T, language string) chroma.CompiledRules {
	return probe(t, lexerOf(language).(*chroma.RegexLexer))
}

// probe takes the rules of a lexer out of a listing that it works on.
func probe(t *testing.T, lexer *chroma.RegexLexer) (found chroma.CompiledRules) {
	t.Helper()
	take := chroma.MutatorFunc(func(state *chroma.LexerState) error {
		found = state.Rules
		return nil
	})
	probed := chroma.MustNewLexer(lexer.Config(), func() chroma.Rules {
		rules := lexer.MustRules().Clone()
		rules["root"] = append([]chroma.Rule{{Pattern: `§`, Type: chroma.Text, Mutator: take}}, rules["root"]...)
		return rules
	})
	if _, err := lex(probed, "§"); err != nil || len(found) == 0 {
		t.Fatalf("%s: %v", lexer.Config().Name, err)
	}
	return found
}

// runaway finds a short text that a pattern does not come to an end with; "" when there is none.
func runaway(rule *chroma.CompiledRule) string {
	const long = 150 // runes of a pattern that is a list of words
	letters := alphabet(rule.Pattern)
	if len(rule.Pattern) > long {
		letters = alphabet("")
	}
	limited := *rule.Regexp
	limited.MatchTimeout = 2 * time.Second
	for _, opening := range append(letters, "", "$'", `$"`, `"""`, "'''", "${", "/*", "<!--", "](") {
		for _, first := range letters {
			for _, second := range append(letters, "") {
				text := opening + strings.Repeat(first+second, 40) + "\x01"
				if _, err := limited.FindRunesMatchStartingAt([]rune(text), 0); err != nil {
					return text
				}
			}
		}
	}
	return ""
}

// alphabet lists the characters that are in a pattern, and a few of the classes that patterns name.
func alphabet(pattern string) []string {
	letters := strings.Split("a0 \n_é\"'\\"+pattern, "")
	slices.Sort(letters)
	return slices.Clip(slices.Compact(letters))
}
