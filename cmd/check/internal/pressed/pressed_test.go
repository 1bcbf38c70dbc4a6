package pressed

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// lay writes a made-up site.
func lay(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		full := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(full), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(full, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func TestReadFindsGuidesAndAssets(t *testing.T) {
	site, err := Read(lay(t, map[string]string{
		"index.html": "", "guides/soil/index.html": "a", "es/guides/soil/index.html": "b", "sources/index.html": "",
		"assets/site.0a.css": "", "assets/site.0a.js": "",
	}))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, f := range site.Guides() {
		names = append(names, f.Name())
	}
	if want := []string{"es/guides/soil", "guides/soil"}; !slices.Equal(names, want) {
		t.Errorf("guides %q, want %q", names, want)
	}
	if css := site.Ending(".css"); len(css) != 1 || css[0].Path != "assets/site.0a.css" {
		t.Errorf("style sheets %v", css)
	}
	if _, err := Read(t.TempDir()); err == nil {
		t.Error("an empty folder passed as a site")
	}
}

func moduleOf(b *Block) string {
	if b == nil {
		return ""
	}
	return string(b.Module)
}

func TestBlock(t *testing.T) {
	const cells = `<input data-cell="0" data-presence="7"><b data-show="2"></b><li data-when="3"><b data-show="0"></b>`
	cases := []struct {
		name, html, want, fault string
	}{
		{"a page with one", `<script type="application/json" id="module">{"m":"0061736d"}</script>`, "\x00asm", ""},
		{"attributes the other way", `<script id="module" type="application/json">{"m":"0061736d"}</script>`, "\x00asm", ""},
		{"no quotes", `<script type=application/json id=module>{"m":"0061736d"}</script>`, "\x00asm", ""},
		{"a page without", `<script src="a.js" defer></script>`, "", ""},
		{"another block", `<script id="module-note">{}</script>`, "", ""},
		{"an empty one", `<script id="module">{"m":""}</script>`, "", "holds no module"},
		{"not hexadecimal", `<script id="module">{"m":"*"}</script>`, "", "data block"},
		{"a pair without a cell", `<script id="module">{"m":"0061736d","fixed":[["x",1]]}</script>`, "", "data block"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			block, err := File{Path: "a/index.html", Bytes: []byte(cells + c.html)}.Block()
			if got := moduleOf(block); got != c.want {
				t.Errorf("module %q, want %q", got, c.want)
			}
			if (err == nil) != (c.fault == "") || err != nil && !strings.Contains(err.Error(), c.fault) {
				t.Errorf("error %v, want %q", err, c.fault)
			}
		})
	}
	bare := File{Path: "a/index.html", Bytes: []byte(`<script id="module">{"m":"0061736d"}</script>`)}
	if _, err := bare.Block(); err == nil {
		t.Error("a page that uses no cell of its module passed")
	}
}

func TestBlockNamesItsCells(t *testing.T) {
	block, err := File{Bytes: []byte(`<input data-cell="0" data-others="10"><b data-show="2"></b><b data-show="0"></b>
		<li data-when="3">
		<script id="module">{"m":"0061736d","sheets":[{"after":null,"refusals":[9]},{"refusals":null}],
		"fixed":[[5,1.5]],"tables":[{"of":1,"down":[6,[1,2]],"across":[7,[1]],"show":8,"mark":[null,4]}]}
		</script>`)}.Block()
	if err != nil {
		t.Fatal(err)
	}
	if want := []int{0, 5, 6, 7, 10}; !slices.Equal(block.Inputs, want) {
		t.Errorf("inputs %v, want %v", block.Inputs, want)
	}
	if want := []int{2, 3, 8, 9}; !slices.Equal(block.Outputs, want) {
		t.Errorf("outputs %v, want %v", block.Outputs, want)
	}
}

func TestTreeSeesEveryChange(t *testing.T) {
	dir := lay(t, map[string]string{"a": "1", "b": "1", "c/d": "1", "skip/e": "1"})
	before, err := Snapshot(dir, "skip")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"a", "new", "skip/e"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("2"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Remove(filepath.Join(dir, "b")); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "empty"), 0o755); err != nil {
		t.Fatal(err)
	}
	after, err := Snapshot(dir, "skip")
	if err != nil {
		t.Fatal(err)
	}
	if got, want := before.Differ(after), []string{"a", "b", "empty/", "new"}; !slices.Equal(got, want) {
		t.Errorf("differ %q, want %q", got, want)
	}
	if got := after.Differ(after); len(got) != 0 {
		t.Errorf("a tree differs from itself: %q", got)
	}
}
