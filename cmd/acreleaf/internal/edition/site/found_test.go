package site

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image/png"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
)

const root = "https://guides.example.org/walnuts/"

// inBoth is a site in two languages, with pages that say when they were reviewed and one that does not.
func inBoth(address string) fstest.MapFS {
	text := func(title, more string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte("---\ntitle: " + title + "\nsummary: About it & more.\n" + more +
			"---\n\nText.\n")}
	}
	return fstest.MapFS{
		"site.yaml": {Data: []byte("office: Sorrel Flat & Sons\nlanguage: [en, es]\nlicence: CC BY 4.0\n" + address)},
		"home.md":   text("Walnuts", ""), "inicio.md": text("Nogales", "language: es\ntranslates: home.md\n"),
		"guides/soil.md": text("Soil", "reviewed: 2026-10-20\norder: 1\nchanges:\n  2026-09-14: Less < more & new.\n"+
			"  2025-03-02: Written.\n"),
		"guides/suelo.md": text("Suelo", "reviewed: 2026-10-21\norder: 1\nchanges:\n  2026-09-14: Menos.\n"+
			"  2025-03-02: Escrita.\nlanguage: es\ntranslates: soil.md\n"),
		"guides/water.md": text("Water", "reviewed: 2026-10-02\norder: 2\n"),
		"guides/new.md":   text("New", "order: 3\n"),
		"manual/start.md": text("Start", "reviewed: 2026-11-01\norder: 1\n"),
	}
}

func pressedFiles(t *testing.T, content fstest.MapFS) map[string][]byte {
	t.Helper()
	files := map[string][]byte{}
	var lock = make(chan struct{}, 1)
	_, said := book.Make(book.Options{Content: content, Name: "content"}, New, func(f output.File) error {
		lock <- struct{}{}
		files[f.Path] = bytes.Clone(f.Bytes)
		<-lock
		return nil
	})
	if message.HasFault(said) {
		t.Fatalf("%v", said)
	}
	return files
}

// What sitemaps.org asks of a map: its namespace, whole addresses of this site, and days as W3C has them. Each page
// that can be found is in it once, with its address as the page has it, and no other.
func TestSiteMap(t *testing.T) {
	files := pressedFiles(t, inBoth("address: "+root+"\n"))
	var list siteMap
	if err := xml.Unmarshal(files["sitemap.xml"], &list); err != nil {
		t.Fatal(err)
	}
	changed := map[string]string{}
	for _, one := range list.Addresses {
		path, ours := strings.CutPrefix(one.Address, root)
		if _, twice := changed[path]; twice || !ours || files[path+"index.html"] == nil {
			t.Errorf("%s is in the map twice, or is no page", one.Address)
		}
		changed[path] = one.Changed
		if !bytes.Contains(files[path+"index.html"], []byte(`<link rel="canonical" href="`+one.Address+`">`)) {
			t.Errorf("%s is not where the page says that it is", one.Address)
		}
	}
	for path := range files {
		folder, isPage := strings.CutSuffix(path, "index.html")
		if _, mapped := changed[folder]; isPage && mapped == strings.HasSuffix(folder, "offline/") {
			t.Errorf("%s is in the map: %v", path, mapped)
		}
	}
	for path, want := range map[string]string{"guides/soil/": "2026-09-14", "es/guides/suelo/": "2026-09-14",
		"guides/new/": "", "": "", "manual/start/": "2026-11-01"} {
		if got, mapped := changed[path]; !mapped || got != want {
			t.Errorf("%q changed on %q, and should on %q", path, got, want)
		}
	}
}

// Above the limit of sitemaps.org there are several maps, and a list of them.
func TestManySiteMaps(t *testing.T) {
	var b book.Book
	for i := range mostAddresses + 1 {
		o := &book.Outline{}
		o.Address = page.Address{Kind: kind.Guide, Name: fmt.Sprintf("guides/g%d", i)}
		b.Outlines = append(b.Outlines, o)
	}
	c := &common{&edition{Settings: &book.Settings{Site: config.Site{Address: root}}}, &b}
	files := c.siteMaps(nil)
	var list mapIndex
	if err := xml.Unmarshal(files[2].Bytes, &list); err != nil || len(files) != 3 || files[2].Path != "sitemap.xml" {
		t.Fatalf("%d files, the last is %s: %v", len(files), files[2].Path, err)
	}
	total := 0
	for i, one := range list.Maps {
		var part siteMap
		if err := xml.Unmarshal(files[i].Bytes, &part); err != nil || one.Address != root+files[i].Path {
			t.Errorf("%s is listed as %s: %v", files[i].Path, one.Address, err)
		}
		if total += len(part.Addresses); len(part.Addresses) > 50_000 || len(files[i].Bytes) > 50<<20 {
			t.Errorf("%s has %d addresses", files[i].Path, len(part.Addresses))
		}
	}
	if total != mostAddresses+1 {
		t.Errorf("%d addresses in all", total)
	}
}

// What RFC 4287 asks of a feed (4.1.1) and of an entry (4.1.2): one id, one title, one moment as RFC 3339 has it; an
// author of the feed; a link to itself, and one of each entry to its page.
func TestFeeds(t *testing.T) {
	files := pressedFiles(t, inBoth("address: "+root+"\n"))
	for path, titles := range map[string][]string{"feed.xml": {"Water", "Soil"}, "es/feed.xml": {"Suelo"}} {
		var f feed
		if err := xml.Unmarshal(files[path], &f); err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		if !bytes.Contains(files[path], []byte(`xmlns="http://www.w3.org/2005/Atom"`)) ||
			!bytes.Contains(files[path], []byte(` xml:lang="`+map[bool]string{true: "es", false: "en"}[path[0] == 'e']+`"`)) {
			t.Errorf("%s begins %.200s", path, files[path])
		}
		var self, alternate string
		for _, l := range f.Links {
			switch l.Relation {
			case "self":
				self = l.Address
			case "alternate":
				alternate = l.Address
			}
		}
		home := strings.TrimSuffix(root+path, "feed.xml")
		if self != root+path || alternate != home || f.ID != home || f.Author != "Sorrel Flat & Sons" || f.Title == "" {
			t.Errorf("%s is of %+v", path, f)
		}
		ids, got := map[string]bool{}, []string{}
		for _, e := range f.Entries {
			got = append(got, e.Title)
			if u, err := url.Parse(e.ID); err != nil || !u.IsAbs() || ids[e.ID] || e.Link.Address != e.ID {
				t.Errorf("%s: an entry has the id %q and the address %q", path, e.ID, e.Link.Address)
			}
			ids[e.ID] = true
			if _, err := time.Parse(time.RFC3339, e.Updated); err != nil || e.Updated > f.Updated || e.Summary == "" {
				t.Errorf("%s: the entry %+v of a feed of %s", path, e, f.Updated)
			}
		}
		if !slices.Equal(got, titles) || f.Updated != f.Entries[0].Updated {
			t.Errorf("%s has %v, not %v; it is of %s", path, got, titles, f.Updated)
		}
		if home := files[strings.TrimSuffix(path, "feed.xml")+"index.html"]; !bytes.Contains(home,
			[]byte(`<link rel="alternate" type="application/atom+xml" href="`+root+path+`">`)) {
			t.Errorf("the home page does not lead to %s", path)
		}
	}
}

// The entry of a revised page carries what changed, as HTML in text (RFC 4287, 3.1.1.2), and is of the day of the last
// change, however late the review was. One of a page that tells of no change has nothing of the sort.
func TestFeedsCarryChanges(t *testing.T) {
	files := pressedFiles(t, inBoth("address: "+root+"\n"))
	for path, want := range map[string]string{
		"feed.xml": `<ul><li><time datetime="2026-09-14">September 14, 2026</time>: Less &lt; more &amp; new.</li>` +
			`<li><time datetime="2025-03-02">March 2, 2025</time>: Written.</li></ul>`,
		"es/feed.xml": `<ul><li><time datetime="2026-09-14">14 de septiembre de 2026</time>: Menos.</li>` +
			`<li><time datetime="2025-03-02">2 de marzo de 2025</time>: Escrita.</li></ul>`,
	} {
		var f feed
		if err := xml.Unmarshal(files[path], &f); err != nil {
			t.Fatal(err)
		}
		e := f.Entries[len(f.Entries)-1]
		if e.Updated != "2026-09-14T00:00:00Z" || e.Content == nil || e.Content.Type != "html" ||
			strings.TrimSpace(e.Content.Text) != want {
			t.Errorf("%s: the entry %q of %s has %+v", path, e.Title, e.Updated, e.Content)
		}
		if len(f.Entries) > 1 && f.Entries[0].Content != nil {
			t.Errorf("%s: %q tells of changes", path, f.Entries[0].Title)
		}
		page := files[strings.TrimPrefix(strings.TrimPrefix(e.ID, root)+"index.html", "/")]
		if !bytes.Contains(page, []byte(want)) || !bytes.Contains(page, []byte(`"dateModified":"2026-09-14"`)) {
			t.Errorf("%s does not show what its feed carries", e.ID)
		}
	}
}

// A page leads to its twins and to itself, each of them to the same, and to the main language for all others.
func TestAlternatesAreMutual(t *testing.T) {
	files := pressedFiles(t, inBoth("address: "+root+"\n"))
	links := regexp.MustCompile(`<link rel="alternate" hreflang="(\S+)" href="(\S+)">`)
	want := [][]string{{"x-default", root + "guides/soil/"}, {"en", root + "guides/soil/"},
		{"es", root + "es/guides/suelo/"}}
	for _, path := range []string{"guides/soil/index.html", "es/guides/suelo/index.html"} {
		var got [][]string
		for _, found := range links.FindAllStringSubmatch(string(files[path]), -1) {
			got = append(got, found[1:])
		}
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s leads to %v, not %v", path, got, want)
		}
	}
}

// The picture that a message shows is there, in the size that is common practice.
func TestCard(t *testing.T) {
	files := pressedFiles(t, inBoth("address: "+root+"\n"))
	image := regexp.MustCompile(`<meta property="og:image" content="(\S+)">`)
	found := image.FindSubmatch(files["guides/soil/index.html"])
	if found == nil {
		t.Fatal("a page names no picture")
	}
	drawn, err := png.DecodeConfig(bytes.NewReader(files[strings.TrimPrefix(string(found[1]), root)]))
	if err != nil || drawn.Width != 1200 || drawn.Height != 630 {
		t.Errorf("%s: %v, %v", found[1], drawn, err)
	}
}

// Without an address nothing is guessed.
func TestNothingIsFoundWithoutAnAddress(t *testing.T) {
	files := pressedFiles(t, inBoth(""))
	for path, text := range files {
		if strings.HasSuffix(path, ".xml") || strings.Contains(path, "card") {
			t.Errorf("%s is made", path)
		}
		if strings.HasSuffix(path, ".html") && bytes.Contains(text, []byte(`<link rel="alternate"`)) ||
			bytes.Contains(text, []byte(`"og:image"`)) {
			t.Errorf("%s has an address", path)
		}
	}
}
