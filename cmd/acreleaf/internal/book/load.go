package book

import (
	"bytes"
	"errors"
	"io/fs"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/memo"
	"acreleaf/cmd/acreleaf/internal/message"
)

// The files of the content folder that are ours to read.
const (
	siteFileName    = "site.yaml"
	sourcesFileName = "sources.yaml"
	homeFileName    = "home.md"
)

// A loaded is what Load gives: what is in the folder, and what the book says of itself.
type loaded struct {
	options Options
	listing *listing
	*Settings
	siteSaid, sourcesSaid message.List
	languages             []string                     // of the site; nil while site.yaml cannot tell
	references            map[string]*config.Reference // the sources; one that did not change is the same one as before
	said                  message.List
}

// load walks the content folder in sorted order, and reads site.yaml and sources.yaml.
func load(o Options, before *loaded, c changes) *loaded {
	l := &loaded{options: o, Settings: new(Settings)}
	if before == nil {
		before = &loaded{Settings: new(Settings)}
	}
	l.loadSite(before, c)
	l.loadSources(before, c)
	l.Settings = memo.Same(before.Settings, l.Settings, (*Settings).same)
	l.keepReferences(before)
	if l.listing = before.listing; c.mustWalk(o.Content, before.listing) {
		l.listing = walk(o)
	}
	if l.listing.err == nil { // or no file in it can be found either
		l.say(l.siteSaid)
		l.say(l.sourcesSaid)
		l.say(config.UnknownSources(l.Site, l.SiteFile, l.Sources))
	}
	l.say(l.listing.said)
	if !message.HasFault(l.siteSaid) {
		l.languages = l.Site.Languages
	}
	if len(l.listing.pages) == 0 && l.listing.err == nil {
		l.say(message.List{{ID: "no-pages", Text: "there is no page in " + o.Name,
			Note: "write one, such as " + o.called("guides/soil.md")}})
	}
	return l
}

func (l *loaded) say(messages message.List) { l.said = append(l.said, messages...) }

func (l *loaded) loadSite(before *loaded, c changes) {
	if !c.stale(siteFileName) {
		l.Site, l.SiteFile, l.siteSaid = before.Site, before.SiteFile, before.siteSaid
		return
	}
	l.Site, l.SiteFile, l.siteSaid = config.Load(l.options.Content, siteFileName)
	l.SiteFile.Name = l.options.called(siteFileName)
	for i := range l.siteSaid {
		if _, err := fs.Stat(l.options.Content, siteFileName); errors.Is(err, fs.ErrNotExist) {
			l.siteSaid[i].Note =
				"make it, with the name of your office in it, such as: office: Sorrel Flat Orchard Office"
		}
	}
	if sameText(before.SiteFile, before.siteSaid, l.SiteFile, l.siteSaid) {
		l.SiteFile = before.SiteFile
	}
}

func (l *loaded) loadSources(before *loaded, c changes) {
	if !c.stale(sourcesFileName) {
		l.Sources, l.SourcesFile, l.sourcesSaid = before.Sources, before.SourcesFile, before.sourcesSaid
		return
	}
	l.Sources = config.BuiltIn()
	if _, err := fs.Stat(l.options.Content, sourcesFileName); err != nil {
		return
	}
	l.Sources, l.SourcesFile, l.sourcesSaid = config.LoadSources(l.options.Content, sourcesFileName)
	l.SourcesFile.Name = l.options.called(sourcesFileName)
	if sameText(before.SourcesFile, before.sourcesSaid, l.SourcesFile, l.sourcesSaid) {
		l.SourcesFile = before.SourcesFile
	}
}

// sameText says whether a file is the same as when it was read before, and was in order then.
func sameText(before *message.Source, said message.List, now *message.Source, says message.List) bool {
	return before != nil && len(said)+len(says) == 0 && bytes.Equal(before.Text, now.Text)
}
