package prose

import (
	"go/ast"
	"go/parser"
	gotoken "go/token"
	"io/fs"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"acreleaf/calc/unit"
)

// wordFiles are the files that may hold words, and which.
var wordFiles = []string{
	"english.go", "spanish.go", // of the languages
	"symbol.go", // symbols that every language writes alike
	"reason.go", // sentences of the program, for an author
}

// allowed are the texts with letters in the other files: those of the program, for an author.
var allowed = []string{"read as %s", "let go (%s): %s"}

// A language is words and no rules: what a sentence means is up to the grammar, which knows none of them.
func TestGrammarKnowsNoLanguage(t *testing.T) {
	names, err := fs.Glob(os.DirFS("."), "*.go")
	if err != nil {
		t.Fatal(err)
	}
	read := 0
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") || slices.Contains(wordFiles, name) {
			continue
		}
		file, err := parser.ParseFile(gotoken.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		read++
		for _, problem := range languageIn(name, file) {
			t.Error(problem)
		}
	}
	if read < 15 {
		t.Errorf("only %d files were read", read)
	}
}

// What the test above would find, in a grammar that knows languages.
func TestLanguageInGrammarIsFound(t *testing.T) {
	file, err := parser.ParseFile(gotoken.NewFileSet(), "in.go", `package prose
func (l *Language) a(t token) bool { return t.text == "per" && l.lexicon.code == "en" }
func b(l *Language) bool { return l != nil && l == english }`, 0)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{`in.go: the word "per"`, "in.go: compares a language", `in.go: the word "en"`,
		"in.go: compares a language", "in.go: compares a language", "in.go: names english"}
	if got := languageIn("in.go", file); !slices.Equal(got, want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
}

// languageIn lists the words in a file, and the places where it asks which language it has.
func languageIn(name string, file *ast.File) (problems []string) {
	languages := languageNames(file)
	lists := name == "language.go" // the list of the languages is there
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.BasicLit:
			text, err := strconv.Unquote(n.Value)
			if n.Kind == gotoken.STRING && err == nil && strings.ContainsFunc(text, unicode.IsLetter) &&
				!slices.Contains(allowed, text) {
				problems = append(problems, name+": the word "+n.Value)
			}
		case *ast.BinaryExpr:
			if n.Op != gotoken.EQL && n.Op != gotoken.NEQ || lists {
				return true
			}
			if isLanguage := func(side ast.Expr) bool {
				id, is := side.(*ast.Ident)
				field, of := side.(*ast.SelectorExpr)
				return is && languages[id.Name] || of && field.Sel.Name == "code"
			}; isLanguage(n.X) || isLanguage(n.Y) {
				problems = append(problems, name+": compares a language")
			}
		case *ast.Ident:
			if (n.Name == "english" || n.Name == "spanish" || n.Name == "symbolsOnly") && !lists {
				problems = append(problems, name+": names "+n.Name)
			}
		}
		return true
	})
	return problems
}

// languageNames gives the names that stand for a language in a file.
func languageNames(file *ast.File) map[string]bool {
	names := map[string]bool{"english": true, "spanish": true, "symbolsOnly": true}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.Field:
			star, is := n.Type.(*ast.StarExpr)
			if !is {
				return true
			}
			if of, is := star.X.(*ast.Ident); is && of.Name == "Language" {
				for _, id := range n.Names {
					names[id.Name] = true
				}
			}
		case *ast.RangeStmt:
			call, is := n.X.(*ast.CallExpr)
			if !is {
				return true
			}
			if of, is := call.Fun.(*ast.SelectorExpr); is && of.Sel.Name == "first" {
				names[n.Key.(*ast.Ident).Name] = true
			}
		}
		return true
	})
	return names
}

// A word of a lexicon does something: its unit is one that calc/unit knows, or has a rule of its own.
func TestLexicons(t *testing.T) {
	rules := []string{plain.name, cent.name, "unit"}
	for _, l := range append(languages, symbolsOnly) {
		for _, table := range []wordTable[*symbol]{l.units, l.bases, l.measures, l.longer, l.one} {
			for words, s := range table {
				if s == nil {
					continue // the start of several words
				}
				if _, err := unit.Parse(s.name); err != nil && !slices.Contains(rules, s.name) {
					t.Errorf("%s: %q is of a unit that calc/unit does not know: %v", l.lexicon.code, words, err)
				}
			}
		}
		for words, s := range l.substances {
			if _, err := unit.Parse("lb " + s); s != "" && err != nil {
				t.Errorf("%s: %q is of a substance that calc/unit does not know: %v", l.lexicon.code, words, err)
			}
		}
		for words := range set(l.lexicon.perBare) {
			if l.per[words]&^perBare == 0 {
				t.Errorf("%s: a rate may begin with %q, which is before none", l.lexicon.code, words)
			}
		}
		for words := range l.halves {
			if l.fractions[words] == 0 {
				t.Errorf("%s: %q is no fraction", l.lexicon.code, words)
			}
		}
		for words := range l.onlyBefore {
			if l.units[words] == nil {
				t.Errorf("%s: %q is no unit", l.lexicon.code, words)
			}
		}
	}
}

// A third language is one lexicon. The French is a toy with a handful of words.
func TestThirdLanguage(t *testing.T) {
	french := newLanguage(lexicon{code: "fr", numbers: "1 un une|2 deux|3 trois|20 vingt|100 cent", ones: "un une",
		fractions: "2 demi demie", halves: "demi demie", and: "et", between: "entre", to: "à", comma: true,
		plain: "ée àa", units: "lb livre livres|oz once onces|in pouce pouces|ac acre acres|tree arbre arbres",
		substances: "N azote", of: "de d", pointing: "l la le", per: "par", each: "l le la chaque",
		bases: "tree arbre|h heure", plural: "s", dayFirst: "de",
		months: "janvier février mars avril mai juin juillet août septembre octobre novembre décembre",
		named:  "rangée", things: "seau"})
	for sentence, want := range map[string]string{
		"Mettez 48 livres par acre.":                   "48 livres par acre: read as 48 lb/ac",
		"Il faut 48 livres d'azote.":                   "48 livres: read as 48 lb",
		"Mettez 48 livres de azote par acre.":          "48 livres de azote par acre: read as 48 lb N/ac",
		"De trois à 4,5 onces par arbre.":              "trois à 4,5 onces par arbre: read as 3 to 4.5 oz/tree",
		"Entre 3 et 4 onces, vingt-deux pouces d'eau.": "3 et 4 onces: read as 3 to 4 oz; vingt-deux pouces: read as 22 in",
		"Rangée 12, 46-0-0, seau de 5 livres.": "Rangée 12: let go (name); 46-0-0: let go (grade); " +
			"5 livres: let go (thing)",
	} {
		var got []string
		for _, line := range Trace(sentence, french) {
			line, _, _ = strings.Cut(line, "): ")
			if strings.Contains(line, "let go") {
				line += ")"
			}
			got = append(got, line)
		}
		if got := strings.Join(got, "; "); got != want {
			t.Errorf("%q:\n got %s\nwant %s", sentence, got, want)
		}
	}
	f, err := french.ReadFigure("48 livres", " par acre", unit.MustParse("lb N/ac"))
	if err != nil || !f.Fits {
		t.Errorf("48 livres par acre: %v, %v", f, err)
	}
	if f, err := french.ReadFigure("48 pounds", " an acre", unit.MustParse("lb N/ac")); err != nil || !f.Fits {
		t.Errorf("48 pounds an acre, in a French text: %v, %v", f, err)
	}
}
