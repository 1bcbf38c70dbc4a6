package words

import (
	"fmt"
	"strings"
)

// An entry is a text as a file has it.
type entry struct {
	text string
	line int
	same bool // it is that of another key
}

// A file is the texts of one calculation in one language, by key.
type file map[string]entry

// read reads a file of texts. A line is "key: text"; a line that begins with a space goes on with the text before it,
// and one that begins with # is for translators.
func read(content string) (file, error) {
	f := file{}
	var last string
	for i, line := range strings.Split(content, "\n") {
		trimmed := strings.TrimSpace(line)
		switch {
		case trimmed == "" || line[0] == '#':
			last = ""
		case line[0] == ' ':
			if last == "" {
				return nil, fmt.Errorf("line %d: there is no key before this text", i+1)
			}
			e := f[last]
			e.text += " " + trimmed
			f[last] = e
		default:
			key, text, found := strings.Cut(trimmed, ": ")
			if _, twice := f[key]; !found || twice {
				return nil, fmt.Errorf("line %d: write a key that is new in this file, a colon, a space and the text", i+1)
			}
			f[key], last = entry{strings.TrimSpace(text), i + 1, false}, key
		}
	}
	return f.spread()
}

// same begins a text that is the one of another key: "= say.nothing", or "= tree-rate: say.nothing" in another file.
const same = "= "

// follow puts the text of another key in the place of each that only names it.
func (f file) follow(others map[string]file) error {
	for key, e := range f {
		other, is := strings.CutPrefix(e.text, same)
		if !is {
			continue
		}
		found, there := f[other]
		if name, inside, far := strings.Cut(other, ": "); far {
			found, there = others[name][inside]
		}
		if !there || strings.HasPrefix(found.text, same) {
			return fmt.Errorf("line %d: there is no text %s", e.line, other)
		}
		f[key] = entry{found.text, e.line, true}
	}
	return nil
}

// spread turns each text that is for several parts of a sheet into one for each of them. Lines such as
// "each.first: first" name the parts. In a key and inside braces * stands for the part, and elsewhere in a text for the
// words after it. A key without * is stronger.
func (f file) spread() (file, error) {
	all := file{}
	for key, e := range f {
		if strings.HasPrefix(key, eachPrefix) {
			continue
		}
		if !strings.Contains(key, "*") {
			all[key] = e
		}
	}
	for key, e := range f {
		if !strings.Contains(key, "*") {
			continue
		}
		parts := 0
		for each, words := range f {
			part, is := strings.CutPrefix(each, eachPrefix)
			if !is {
				continue
			}
			parts++
			one := strings.ReplaceAll(key, "*", part)
			if _, stronger := f[one]; !stronger {
				all[one] = entry{fill(e.text, part, words.text), e.line, false}
			}
		}
		if parts == 0 {
			return nil, fmt.Errorf("line %d: the key has a *, and no line such as %sfirst says what it is for", e.line,
				eachPrefix)
		}
	}
	return all, nil
}

const eachPrefix = "each."

// fill puts a part and its words in the places of *.
func fill(text, part, words string) string {
	var b strings.Builder
	for text != "" {
		before, rest, _ := strings.Cut(text, "{")
		b.WriteString(strings.ReplaceAll(before, "*", words))
		if rest == "" {
			break
		}
		name, after, _ := strings.Cut(rest, "}")
		b.WriteString("{" + strings.ReplaceAll(name, "*", part) + "}")
		text = after
	}
	return b.String()
}
