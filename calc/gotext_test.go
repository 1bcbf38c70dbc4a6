package calc_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"acreleaf/calc/unit"
)

// threeWords is what no id and no name has in it.
var threeWords = regexp.MustCompile(`[A-Za-z]{2,}[,:]? [a-z]{2,},? [a-z]{2,}`)

// No sentence for a reader is in Go code: it is in calc/words, by key. Messages for authors begin with a small letter,
// as all messages of the program do, and are written where the mistake is found; calc/nitrogen has none.
func TestNoSentenceIsInGoCode(t *testing.T) {
	for _, folder := range []string{"nitrogen", "sheet", "formula", "fact"} {
		files, err := filepath.Glob(folder + "/*.go")
		if err != nil || len(files) == 0 {
			t.Fatalf("%s has %d files: %v", folder, len(files), err)
		}
		for _, name := range files {
			if strings.HasSuffix(name, "_test.go") || name == "fact/bibliography.go" { // titles of publications
				continue
			}
			for _, found := range sentencesIn(t, name, nil, folder != "nitrogen") {
				t.Errorf("%s: put this in calc/words and name its key", found)
			}
		}
	}
}

func TestSentencesInGoCodeAreFound(t *testing.T) {
	source := `package p
func f() {
	s.Say(Note, when, "Roots reach about 6 in past the drip line.")
	s.Say(Note, when, "roots-reach")
	s.Given("need", "lb N/ac taken up", Field{Label: "What the trees " + "need in all"})
	s.fault("this is not a quantity of the sheet")
}`
	for messages, want := range map[bool]int{false: 3, true: 2} {
		if found := sentencesIn(t, "p.go", source, messages); len(found) != want {
			t.Errorf("%d sentences were found where messages are %v, want %d: %q", len(found), messages, want, found)
		}
	}
}

// sentencesIn lists the sentences in the string literals of a file, with their places.
func sentencesIn(t *testing.T, name string, source any, messages bool) []string {
	t.Helper()
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, name, source, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	ast.Inspect(file, func(n ast.Node) bool {
		literal, is := n.(ast.Expr)
		if !is {
			return true
		}
		text, is := constantText(literal)
		if !is {
			return true
		}
		first, _ := utf8.DecodeRuneInString(text)
		if threeWords.MatchString(text) && !isQuantity(text) && !(messages && !unicode.IsUpper(first)) {
			found = append(found, files.Position(n.Pos()).String()+": "+strconv.Quote(text))
		}
		return false
	})
	return found
}

// constantText is a string literal, or several that are joined.
func constantText(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		text, err := strconv.Unquote(e.Value)
		return text, err == nil && e.Kind == token.STRING
	case *ast.BinaryExpr:
		left, isText := constantText(e.X)
		right, isToo := constantText(e.Y)
		return left + right, isText && isToo
	}
	return "", false
}

// isQuantity says whether a text is a number with a unit, a unit, or the end of one.
func isQuantity(text string) bool {
	_, err := unit.ParseQuantity(text)
	if err != nil {
		_, err = unit.Parse(text)
	}
	if err != nil {
		_, err = unit.Parse("lb" + text)
	}
	return err == nil
}
