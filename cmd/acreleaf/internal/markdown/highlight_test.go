package markdown

import (
	"bytes"
	"html"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"acreleaf/cmd/acreleaf/internal/cputime"
)

func TestHighlight(t *testing.T) {
	for _, c := range []struct{ language, code, want string }{
		{"go", "func f(x int) string { return \"a<b\" + 'c' } // 12 & more\n",
			`<span class="keyword">func</span> <span class="name">f</span>(x <span class="keyword">int</span>) ` +
				`<span class="keyword">string</span> { <span class="keyword">return</span> ` +
				`<span class="string">&quot;a&lt;b&quot;</span> ` +
				`<span class="operator">+</span> <span class="string">'c'</span> } ` +
				`<span class="comment">// 12 &amp; more</span>` + "\n"},
		{"YAML", "depth: 12 # in\r\n",
			`<span class="name">depth</span>: <span class="number">12</span> <span class="comment"># in</span>` + "\n"},
		{"json", "{\"a\": [1, true]}",
			`{<span class="name">&quot;a&quot;</span>: [<span class="number">1</span>, <span class="keyword">true</span>]}`},
		{"mjs", "const a = 1;",
			`<span class="keyword">const</span> a <span class="operator">=</span> <span class="number">1</span>;`},
		{"no such language", "a < b\n", "a &lt; b\n"},
		{"", "func f()\n", "func f()\n"},
		{"go", "// " + strings.Repeat("x", lineLimit), "// " + strings.Repeat("x", lineLimit)},
	} {
		var w bytes.Buffer
		if err := Highlight(&w, c.language, c.code); err != nil {
			t.Errorf("%s: %v", c.language, err)
		}
		want := `<pre class="code"><code>` + c.want + "</code></pre>\n"
		if diff := cmp.Diff(want, w.String()); diff != "" {
			t.Errorf("%s %q:\n%s", c.language, c.code, diff)
		}
	}
}

var span = regexp.MustCompile(`<span class="[a-z]+">|</span>`)

// TestLanguagesAreWholeAndQuick runs every language over texts that are hard on lexers, with lines as long as
// they may be. The text must come out unchanged but for its spans, and in time.
func TestLanguagesAreWholeAndQuick(t *testing.T) {
	hard := []string{"\n", "a\n", ":\n", "- a\n", "é ", "\\\n"}
	for _, piece := range strings.Fields("( \" <a \\ ` *a_ { a: /* - ${ ' [ = # | & $ 1 // <!-- * _ ~ < ---") {
		hard = append(hard, strings.Repeat(piece, lineLimit/len(piece))+"\n")
	}
	plain := plainTime(t)
	for _, language := range languages {
		for _, piece := range hard {
			code := strings.Repeat(piece, hostileSize/100/len(piece))
			start := cputime.Used()
			got, err := lex(lexerOf(language), code)
			if err != nil {
				t.Errorf("%.10q: %v", code, err)
				continue
			}
			if spent := cputime.Used() - start; spent > hostileLimit*plain {
				t.Errorf("%s, %.10q: %d bytes took %v", language, code, len(code), spent)
			}
			if text := html.UnescapeString(span.ReplaceAllString(got, "")); strings.TrimSuffix(text, "\n") !=
				strings.TrimSuffix(code, "\n") {
				t.Errorf("%s, %.10q: the text changed", language, code)
			}
		}
	}
}

// TestCacheIsBounded fills the cache past its limit.
func TestCacheIsBounded(t *testing.T) {
	cache := listings{limit: 3_000}
	lexer := lexerOf("diff")
	code := strings.Repeat("a\n", 500)
	for i := range 10 {
		if _, err := cache.get(lexer, code[:len(code)-i]); err != nil {
			t.Fatal(err)
		}
		if most := cache.limit + 2*len(code); cache.size > most || cache.size != sizeOf(&cache) {
			t.Fatalf("%d bytes are kept, counted as %d, want at most %d", sizeOf(&cache), cache.size, most)
		}
	}
	first, err := cache.get(lexer, "+a\n")
	if err != nil {
		t.Fatal(err)
	}
	again, err := cache.get(lexer, "+a\n")
	if err != nil || again != first || first != "+a\n" {
		t.Errorf("%q, then %q, %v", first, again, err)
	}
}

func sizeOf(cache *listings) (size int) {
	for key, html := range cache.html {
		size += len(key.code) + len(html)
	}
	return size
}
