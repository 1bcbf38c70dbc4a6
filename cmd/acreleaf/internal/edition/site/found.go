package site

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"slices"
	"strings"
	"sync"

	"acreleaf/cmd/acreleaf/internal/assets"
	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/raster"
	"acreleaf/cmd/acreleaf/internal/render"
)

// What search engines and readers of feeds ask for. All of it needs whole addresses, so a site without an address has
// none of it.

// mostAddresses is how many a site map may have (sitemaps.org, protocol).
const mostAddresses = 50_000

type siteMap struct {
	XMLName   xml.Name `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 urlset"`
	Addresses []mapped `xml:"url"`
}

type mapIndex struct {
	XMLName xml.Name `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 sitemapindex"`
	Maps    []mapped `xml:"sitemap"`
}

type mapped struct {
	Address string `xml:"loc"`
	Changed string `xml:"lastmod,omitempty"`
}

// siteMaps list the pages that can be found: those that somebody wrote, with the day of their last change or review,
// and those that list them. Above the limit of one map there are several, and a list of them.
func (c *common) siteMaps(made []book.Part) []output.File {
	var all []mapped
	for _, o := range c.book.Outlines {
		all = append(all, mapped{c.Site.Address + o.Address.String(), o.Changed})
	}
	written := len(all)
	for _, p := range made {
		if folder, isPage := strings.CutSuffix(p.Path, "index.html"); isPage && !strings.HasSuffix(folder, offlineFolder) {
			all = append(all, mapped{Address: c.Site.Address + folder})
		}
	}
	slices.SortFunc(all[written:], func(a, b mapped) int { return strings.Compare(a.Address, b.Address) })
	if len(all) <= mostAddresses {
		return []output.File{xmlFile("sitemap.xml", siteMap{Addresses: all})}
	}
	var list mapIndex
	var files []output.File
	for part := range slices.Chunk(all, mostAddresses) {
		name := fmt.Sprintf("sitemap-%d.xml", len(files)+1)
		files = append(files, xmlFile(name, siteMap{Addresses: part}))
		list.Maps = append(list.Maps, mapped{Address: c.Site.Address + name})
	}
	return append(files, xmlFile("sitemap.xml", list))
}

// offlineFolder is how the addresses of the pages end that only a reader without a network comes to.
var offlineFolder = offlineAddress("").String()

// A feed tells of what is new or was revised (RFC 4287).
type feed struct {
	XMLName  xml.Name    `xml:"http://www.w3.org/2005/Atom feed"`
	Language string      `xml:"xml:lang,attr"`
	ID       string      `xml:"id"`
	Title    string      `xml:"title"`
	About    string      `xml:"subtitle,omitempty"`
	Updated  string      `xml:"updated"`
	Author   string      `xml:"author>name"`
	Rights   string      `xml:"rights,omitempty"`
	Links    []feedLink  `xml:"link"`
	Entries  []feedEntry `xml:"entry"`
}

type feedLink struct {
	Relation string `xml:"rel,attr"`
	Type     string `xml:"type,attr"`
	Address  string `xml:"href,attr"`
}

type feedEntry struct {
	ID      string       `xml:"id"`
	Title   string       `xml:"title"`
	Updated string       `xml:"updated"`
	Link    feedLink     `xml:"link"`
	Summary string       `xml:"summary"`
	Content *feedContent `xml:"content"` // what changed, of a page that says so
}

type feedContent struct {
	Type string `xml:"type,attr"`
	Text string `xml:",chardata"`
}

// mostEntries is how many pages a feed tells of: enough for those who look at it once a month.
const mostEntries = 50

// feedFor is the way to the feed of the language of a home page, "" for none.
func (c *common) feedFor(home page.Address) string {
	isFed := func(o *book.Outline) bool { return fed(home, o) }
	if c.Site.Address == "" || !slices.ContainsFunc(c.book.Outlines, isFed) {
		return ""
	}
	return feedPath(home)
}

// fed says whether a page is in the feed of the language of a home page.
func fed(home page.Address, o *book.Outline) bool {
	return o.Changed != "" && o.Address.Language == home.Language && o.Address.Kind.Row().Reader == kind.Grower &&
		o.Address.Kind != kind.Home
}

// feedOf is the feed of a language, nil for one without a dated page. Its entries are the pages for growers, the last
// changed first. A page keeps its id, which is its address.
func (c *common) feedOf(home page.Address, language string) *feed {
	f := &feed{Language: language, ID: c.Site.Address + home.String(), Title: c.Site.Office,
		About:  c.Site.In(language).Tagline,
		Author: c.Site.Office, Rights: c.Site.Licence}
	for _, o := range c.book.Outlines {
		if !fed(home, o) {
			continue
		}
		address := c.Site.Address + o.Address.String()
		f.Entries = append(f.Entries, feedEntry{ID: address, Title: o.Title, Updated: moment(o.Changed),
			Link: feedLink{"alternate", "text/html", address}, Summary: o.Summary, Content: c.changes(o, language)})
	}
	if len(f.Entries) == 0 {
		return nil
	}
	slices.SortStableFunc(f.Entries, func(a, b feedEntry) int { return strings.Compare(b.Updated, a.Updated) })
	f.Entries = f.Entries[:min(len(f.Entries), mostEntries)]
	f.Updated = f.Entries[0].Updated
	f.Links = []feedLink{{"self", "application/atom+xml", c.Site.Address + feedPath(home)},
		{"alternate", "text/html", f.ID}}
	return f
}

// changes are what changed on a page, as a feed carries it; nil for a page that does not say.
func (c *common) changes(o *book.Outline, language string) *feedContent {
	if len(o.Changes) == 0 {
		return nil
	}
	var list []render.Change
	for _, one := range o.Changes {
		list = append(list, render.Change(one))
	}
	var w bytes.Buffer
	c.renderer(language).Changes(&w, list)
	return &feedContent{"html", w.String()}
}

// moment is a day as RFC 3339 has it.
func moment(day string) string { return day + "T00:00:00Z" }

func feedPath(home page.Address) string { return home.String() + "feed.xml" }

// found are the files by which a site is found.
func (c *common) found(made []book.Part) []output.File {
	if c.Site.Address == "" {
		return nil
	}
	files := append(c.siteMaps(made), card())
	for i, language := range c.Site.Languages {
		home := page.Address{Kind: kind.Home, Language: language}
		if i == 0 {
			home.Language = ""
		}
		if f := c.feedOf(home, language); f != nil {
			files = append(files, xmlFile(feedPath(home), f))
		}
	}
	return files
}

func xmlFile(path string, of any) output.File {
	text, err := xml.MarshalIndent(of, "", " ")
	if err != nil {
		panic(err) // it is texts alone
	}
	return output.File{Path: path, Bytes: []byte(xml.Header + string(text) + "\n")}
}

// card is the picture that a message shows which links to a page (Open Graph): the icon on its ground. Its size is the
// common practice of those who show such messages.
var card = sync.OnceValue(func() output.File {
	built, _ := bundle()
	drawn, err := raster.PNG(built.Icon.Bytes, 1200, 630, 480)
	if err != nil {
		panic(err) // the theme is part of the program
	}
	return assets.Named("card", ".png", drawn)
})
