package packet

import (
	"archive/zip"
	"bytes"
	"io"
	"io/fs"
	"maps"
	"net/url"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/epub"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/nodes"
	"acreleaf/cmd/acreleaf/internal/output"
)

const address = "https://sorrelflat.example.org/"

func demo() fs.FS { return os.DirFS("../../../../../content") }

// addressed is the demo with an address.
func addressed(t *testing.T) fs.FS {
	t.Helper()
	folder := t.TempDir()
	if err := os.CopyFS(folder, demo()); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(folder, "site.yaml")
	text, err := os.ReadFile(name)
	if err == nil {
		err = os.WriteFile(name, append(text, "address: "+address+"\n"...), 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
	return os.DirFS(folder)
}

// made gives the files of an edition by their paths.
func made(t *testing.T, content fs.FS, edition book.New) map[string][]byte {
	t.Helper()
	var mutex sync.Mutex
	files := map[string][]byte{}
	_, said := book.Make(book.Options{Content: content, Name: "content"}, edition, func(f output.File) error {
		mutex.Lock()
		defer mutex.Unlock()
		files[f.Path] = f.Bytes
		return nil
	})
	if message.HasFault(said) {
		t.Fatal(said)
	}
	return files
}

// What several tests look at is made once, and nothing changes it: all packets of the demo, and its site.
var once struct {
	packets, site     sync.Once
	ofPackets, ofSite map[string][]byte
}

// packetsOf makes the packets of some pages, of all where none is named.
func packetsOf(t *testing.T, content fs.FS, only []string) map[string][]byte {
	t.Helper()
	if content != demo() || len(only) > 0 {
		return made(t, content, Of(content, only, false))
	}
	once.packets.Do(func() { once.ofPackets = made(t, content, Of(content, nil, false)) })
	return once.ofPackets
}

func demoSite(t *testing.T) map[string][]byte {
	t.Helper()
	once.site.Do(func() { once.ofSite = made(t, demo(), site.New) })
	return once.ofSite
}

// parsed reads a packet, and gives its elements.
func parsed(t *testing.T, file []byte) []*html.Node {
	t.Helper()
	document, err := html.Parse(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return nodes.Elements(document)
}

// idsOf gives the ids of a packet: those of the page that it opens with, and, by the id of its template, those of each
// other page.
func idsOf(t *testing.T, name string, all []*html.Node) map[string]map[string]bool {
	t.Helper()
	ids := map[string]map[string]bool{}
	for _, n := range all {
		page := ""
		for above := range n.Ancestors() {
			if above.Data == "template" {
				page = nodes.Attribute(above, "id")
			}
		}
		id := nodes.Attribute(n, "id")
		if ids[page] == nil {
			ids[page] = map[string]bool{}
		}
		if id != "" && ids[page][id] {
			t.Errorf("%s: the id %q is there twice in %q", name, id, page)
		}
		ids[page][id] = true
	}
	return ids
}

// Nothing in a packet is fetched, and every link leads somewhere: into the file, to a packet beside it, or to where a
// browser finds it.
func TestNothingIsOutside(t *testing.T) {
	for _, c := range []struct {
		name    string
		content fs.FS
		only    []string
		site    string // where links to the site may lead
	}{
		{"all", demo(), nil, ""},
		{"all, with an address", addressed(t), nil, address},
		{"three pages", demo(), []string{"guides/soil.md", "home.md", "workshops/report.md"}, ""},
		{"three pages, with an address", addressed(t),
			[]string{"guides/soil.md", "guides/water.md", "courses/feeding/trees.md"}, address},
	} {
		t.Run(c.name, func(t *testing.T) {
			packets := packetsOf(t, c.content, c.only)
			if want := len(c.only); want > 0 && len(packets) != want || want == 0 && len(packets) != len(Pages(c.content))+2 {
				t.Errorf("packets: %q", slices.Sorted(maps.Keys(packets)))
			}
			all := map[string][]*html.Node{}
			ids := map[string]map[string]map[string]bool{}
			for name, file := range packets {
				if path.Ext(name) == ".html" {
					all[name] = parsed(t, file)
					ids[name] = idsOf(t, name, all[name])
				}
			}
			for name := range all {
				for _, n := range all[name] {
					checkReference(t, name, n, ids, c.site)
				}
				checkPolicy(t, name, packets[name], all[name])
			}
		})
	}
}

func checkReference(t *testing.T, name string, n *html.Node, ids map[string]map[string]map[string]bool, site string) {
	t.Helper()
	for _, fetched := range []string{"src", "srcset", "data", "poster", "style", "action", "background"} {
		if value := nodes.Attribute(n, fetched); nodes.Has(n, fetched) && !strings.HasPrefix(value, "data:") {
			t.Errorf("%s: <%s %s=%q>", name, n.Data, fetched, value)
		}
	}
	if !nodes.Has(n, "href") {
		return
	}
	href := nodes.Attribute(n, "href")
	ofSite := site != "" && strings.HasPrefix(href, site)
	to, err := url.Parse(href)
	switch {
	case err != nil:
		t.Errorf("%s: %v", name, err)
	case n.Data != "a":
		rel := nodes.Attribute(n, "rel")
		states := ofSite && (rel == "canonical" || rel == "alternate")
		if !states && !strings.HasPrefix(href, "data:image/") {
			t.Errorf("%s: <%s href=%q>", name, n.Data, href)
		}
	case to.IsAbs():
		known := slices.Contains([]string{"https", "http", "mailto", "tel"}, to.Scheme)
		if !known || to.Host == "sorrelflat.example.org" && !ofSite {
			t.Errorf("%s: a link to %s", name, href)
		}
	default:
		checkInside(t, name, n, to, ids)
	}
}

// checkInside looks at a link into a packet: the page must be there, and the part of it.
func checkInside(t *testing.T, name string, n *html.Node, to *url.URL, ids map[string]map[string]map[string]bool) {
	t.Helper()
	file, page, part := name, "", to.Fragment
	if to.Path != "" {
		file = path.Join(path.Dir(name), to.Path)
	}
	if strings.HasPrefix(to.Fragment, "/") {
		page, part = path.Split(to.Fragment)
	} else if file == name {
		for above := range n.Ancestors() {
			if above.Data == "template" {
				page = nodes.Attribute(above, "id")
			}
		}
	}
	if page == "/" {
		page = ""
	}
	if inside := ids[file][page]; inside == nil || part != "" && !inside[part] {
		t.Errorf("%s: nothing is at %s", name, to)
	}
}

// checkPolicy works the hashes of what is in the file again, from the bytes between the tags.
func checkPolicy(t *testing.T, name string, file []byte, all []*html.Node) {
	t.Helper()
	policy := ""
	for _, n := range all {
		if nodes.Attribute(n, "http-equiv") == "Content-Security-Policy" {
			policy = nodes.Attribute(n, "content")
		}
		for _, a := range n.Attr {
			if strings.HasPrefix(a.Key, "on") {
				t.Errorf("%s: <%s %s>", name, n.Data, a.Key)
			}
		}
	}
	for _, must := range []string{"default-src 'none'", "require-trusted-types-for 'script'", "trusted-types 'none'",
		"base-uri 'none'", "form-action 'none'"} {
		if !strings.Contains(policy, must) {
			t.Errorf("%s: the policy has no %s: %s", name, must, policy)
		}
	}
	for _, never := range []string{"unsafe-inline", "unsafe-eval ", "'self'", "*", "http:", "https:"} {
		if strings.Contains(policy, never) {
			t.Errorf("%s: the policy has %s: %s", name, never, policy)
		}
	}
	scripts, styles, _ := strings.Cut(policy[strings.Index(policy, ";"):], "style-src")
	for _, found := range inFile.FindAllSubmatch(file, -1) {
		allowed := scripts
		if len(found[3]) > 0 {
			allowed = styles
		}
		text := string(found[2]) + string(found[4])
		if !strings.Contains(allowed, strings.TrimSpace(hashes([]string{text}))) {
			t.Errorf("%s: the policy does not allow this: %.60s", name, text)
		}
		if bytes.Contains(found[0], []byte("url(")) && !bytes.Contains(found[0], []byte("url(data:")) {
			t.Errorf("%s: a style leads outside", name)
		}
	}
}

var inFile = regexp.MustCompile(`(?s)<(script)>(.*?)</script>|<(style)>(.*?)</style>`)

// What is mailed alone says what is not in it; all packets together lead to each other.
func TestLinksSayWhereTheyLead(t *testing.T) {
	const soil = "guides/soil.html"
	only := []string{"guides/soil.md"}
	for _, c := range []struct {
		name    string
		content fs.FS
		only    []string
		want    []string
		never   string
	}{
		{"alone, with an address", addressed(t), only, []string{
			`<a href="` + address + `guides/water/" rel="next">`,
			"It needs the network, and is here: <a href=\"" + address + "\">",
			`<a href="` + address + `calculations/soil-nitrogen/">For the curious: how this answer is worked (on the site)</a>`,
		}, "Ask the office that made it"},
		{"alone", demo(), only, []string{"how this answer is worked (on the site)</span>", "Ask the office that made it"},
			`<nav aria-label="This site"`},
		{"with all", demo(), nil, []string{`<a href="water.html" rel="next">`, `<a href="../home.html">All guides</a>`,
			`<a href="../site.html#/calculations/soil-nitrogen/">`, "Keep them in one folder."}, "on the site"},
	} {
		t.Run(c.name, func(t *testing.T) {
			page := string(packetsOf(t, c.content, c.only)[soil])
			for _, want := range c.want {
				if !strings.Contains(page, want) {
					t.Errorf("the page has no %s", want)
				}
			}
			if strings.Contains(page, c.never) {
				t.Errorf("the page has %s", c.never)
			}
		})
	}
}

// The address of a packet is one of a computer, so no button puts numbers into it.
func TestNoLinkWithNumbers(t *testing.T) {
	content := demo()
	const name, button = "block", ` data-link`
	if page := demoSite(t)[name+"/index.html"]; !bytes.Contains(page, []byte(button)) {
		t.Fatal("the page of the site has no such button")
	}
	page := made(t, content, Of(content, []string{name + ".md"}, false))[name+".html"]
	if page == nil || bytes.Contains(page, []byte(button)) {
		t.Errorf("the packet has a button that makes a link, or is not there (%d bytes)", len(page))
	}
}

// The archive has the files that a press writes, and no others; all packets are the same bytes again, with books beside
// them or not; and the books are those of their own edition.
func TestTheArchiveIsTheSite(t *testing.T) {
	content := demo()
	packets := made(t, content, Of(content, nil, true))
	without := packetsOf(t, content, nil)
	for name, again := range without {
		if !bytes.Equal(packets[name], again) {
			t.Errorf("%s is not the same twice", name)
		}
	}
	archive := packets[ArchiveFile]
	z, err := zip.NewReader(bytes.NewReader(archive), int64(len(archive)))
	if err != nil {
		t.Fatal(err)
	}
	pressed := maps.Clone(demoSite(t))
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		inside, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(inside, pressed[f.Name]) {
			t.Errorf("%s is not as it is pressed", f.Name)
		}
		delete(pressed, f.Name)
	}
	if len(pressed) > 0 {
		t.Errorf("the archive lacks %q", slices.Sorted(maps.Keys(pressed)))
	}
	books := made(t, content, epub.Of(content, nil))
	for name, book := range books {
		if !bytes.Equal(packets[name], book) {
			t.Errorf("%s is not the book that %q makes", name, "acreleaf epub")
		}
	}
	if len(books) < 16 || len(packets) != len(without)+len(books) {
		t.Errorf("%d books, and %d files beside the packets", len(books), len(packets)-len(without))
	}
}

func TestBooksOfSomePages(t *testing.T) {
	only := []string{"courses/feeding/soil.md", "courses/feeding/trees.md", "guides/soil.md", "home.md"}
	if got := booksOf(only); !slices.Equal(got, []string{"courses/feeding", "guides/soil.md"}) {
		t.Errorf("books of %q", got)
	}
}
