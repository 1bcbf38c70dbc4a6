package site

import (
	"encoding/json"
	"fmt"
	"strings"
	"sync"

	"acreleaf/cmd/acreleaf/internal/assets"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/offline"
	"acreleaf/cmd/acreleaf/internal/output"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/raster"
	"acreleaf/cmd/acreleaf/internal/render"
)

// NewList prepares the list of the files of a pressed site. A desk has none: an author must always see what is newest,
// so nothing of a desk is kept.
func NewList() *offline.List {
	built, _ := bundle()
	return offline.NewList(built.Worker)
}

// offlineAddress is where the page is that a reader comes to without a network.
func offlineAddress(language string) page.Address {
	return page.Address{Kind: kind.Offline, Language: language, Name: "offline"}
}

func (c *common) offlineView(address page.Address, words *render.Words) *render.Page {
	v := c.edition.frame(address, words.Offline.Title, words.Offline.Summary)
	for _, home := range c.homesInLanguages(homeOf(address)) {
		to := offlineAddress("")
		if home.Code != c.Site.Languages[0] {
			to.Language = home.Code
		}
		home.Href, home.Address = address.To(to), to.String()
		v.Languages = append(v.Languages, home)
	}
	return &v
}

// An iconFile is the icon of the site as a picture of dots, and how the manifest describes it.
type iconFile struct {
	output.File
	sizes, purpose string
}

// icons are those of the site on the start screen of a phone, in the sizes that systems ask for. The last leaves room
// for a system that cuts a circle out of it (W3C, Web Application Manifest: maskable).
var icons = sync.OnceValue(func() []iconFile {
	built, _ := bundle()
	var list []iconFile
	for _, of := range []struct {
		purpose     string
		whole, icon int
	}{{"", 192, 192}, {"", 512, 512}, {"maskable", 512, 400}} {
		drawn, err := raster.PNG(built.Icon.Bytes, of.whole, of.whole, of.icon)
		if err != nil {
			panic(err) // the theme is part of the program
		}
		list = append(list, iconFile{assets.Named(fmt.Sprintf("icon-%d", of.icon), ".png", drawn),
			fmt.Sprintf("%dx%d", of.whole, of.whole), of.purpose})
	}
	return list
})

// A manifest tells a browser how the site is installed (W3C, Web Application Manifest).
type manifest struct {
	Name       string `json:"name"`
	Short      string `json:"short_name"`
	About      string `json:"description,omitempty"`
	Language   string `json:"lang"`
	Start      string `json:"start_url"`
	Scope      string `json:"scope"`
	Display    string `json:"display"`
	Background string `json:"background_color"`
	Theme      string `json:"theme_color"`
	Icons      []icon `json:"icons"`
}

type icon struct {
	Source  string `json:"src"`
	Sizes   string `json:"sizes"`
	Type    string `json:"type"`
	Purpose string `json:"purpose,omitempty"`
}

// manifests are those of the languages, each beside its home page, where the script looks for it. All ways are
// relative, so that the site may be in any folder.
func (e *edition) manifests() []output.File {
	var list []output.File
	for i, language := range e.Site.Languages {
		home := page.Address{Kind: kind.Home, Language: language}
		if i == 0 {
			home.Language = ""
		}
		m := manifest{Name: e.Site.Office, Short: shortName(e.Site.Office), About: e.Site.In(language).Tagline,
			Language: language,
			Start:    "./", Scope: home.ToPath(""), Display: "minimal-ui", Background: "#ffffff", Theme: "#ffffff"}
		for _, drawn := range icons() {
			m.Icons = append(m.Icons, icon{home.ToPath(drawn.Path), drawn.sizes, "image/png", drawn.purpose})
		}
		text, err := json.MarshalIndent(m, "", "  ")
		if err != nil {
			panic(err) // it is texts alone
		}
		list = append(list, output.File{Path: home.String() + "site.webmanifest", Bytes: append(text, '\n')})
	}
	return list
}

// shortName is as much of a name as fits below an icon: its first words, up to a dozen letters, and no small word at
// the end.
func shortName(name string) string {
	words := strings.Fields(name)
	for n := len(words); n > 1 && (len([]rune(strings.Join(words, " "))) > 12 || n < len(strings.Fields(name)) &&
		len(words[n-1]) < 4); n-- {
		words = words[:n-1]
	}
	return strings.Join(words, " ")
}
