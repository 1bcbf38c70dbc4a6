package site

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/message"
)

// The files of the content folder that are ours to read.
const (
	siteFileName    = "site.yaml"
	sourcesFileName = "sources.yaml"
	homeFileName    = "home.md"
)

// A listing is what is in the content folder, as it is walked.
type listing struct {
	options      Options
	pages        []string
	calculations []string        // the files that hold one
	files        []string        // that are neither pages nor our own YAML
	known        map[string]bool // all of these, and our own YAML
	said         message.List
	unsure       bool // there is more to it than plain files, so that what changes cannot be told from their names
	err          error
}

// load walks the content folder in sorted order, and reads site.yaml and sources.yaml.
func (p *press) load() {
	p.loadSite()
	p.loadSources()
	p.keepReferences()
	p.keepCopies()
	if p.mustWalk() {
		p.listing = walk(p.options)
	} else {
		p.listing = p.before.listing
	}
	if p.listing.err == nil { // or no file in it can be found either
		p.say(p.siteSaid)
		p.say(p.sourcesSaid)
		p.say(config.UnknownSources(p.site, p.siteFile, p.sources))
	}
	p.say(p.listing.said)
	if !message.HasFault(p.siteSaid) {
		p.languages = p.site.Languages
	}
	if len(p.listing.pages) == 0 && p.listing.err == nil {
		p.say(message.List{{ID: "no-pages", Text: "there is no page in " + p.options.Name,
			Note: "write one, such as " + p.called("guides/soil.md")}})
	}
}

func (p *press) loadSite() {
	if !p.stale(siteFileName) {
		p.site, p.siteFile, p.siteSaid = p.before.site, p.before.siteFile, p.before.siteSaid
		return
	}
	p.site, p.siteFile, p.siteSaid = config.Load(p.options.Content, siteFileName)
	p.siteFile.Name = p.called(siteFileName)
	for i := range p.siteSaid {
		if _, err := fs.Stat(p.options.Content, siteFileName); errors.Is(err, fs.ErrNotExist) {
			p.siteSaid[i].Note =
				"make it, with the name of your office in it, such as: office: Sorrel Flat Orchard Office"
		}
	}
	if b := p.before; b != nil && sameText(b.siteFile, b.siteSaid, p.siteFile, p.siteSaid) {
		p.siteFile = b.siteFile
	}
}

func (p *press) loadSources() {
	if !p.stale(sourcesFileName) {
		p.sources, p.sourcesFile, p.sourcesSaid = p.before.sources, p.before.sourcesFile, p.before.sourcesSaid
		return
	}
	p.sources = config.BuiltIn()
	if _, err := fs.Stat(p.options.Content, sourcesFileName); err != nil {
		return
	}
	p.sources, p.sourcesFile, p.sourcesSaid = config.LoadSources(p.options.Content, sourcesFileName)
	p.sourcesFile.Name = p.called(sourcesFileName)
	if b := p.before; b != nil && sameText(b.sourcesFile, b.sourcesSaid, p.sourcesFile, p.sourcesSaid) {
		p.sourcesFile = b.sourcesFile
	}
}

// sameText says whether a file is the same as when it was read before, and was in order then.
func sameText(before *message.Source, said message.List, now *message.Source, says message.List) bool {
	return before != nil && len(said)+len(says) == 0 && bytes.Equal(before.Text, now.Text)
}

// walk lists the content folder.
func walk(o Options) *listing {
	l := &listing{options: o, known: map[string]bool{}}
	l.err = fs.WalkDir(o.Content, ".", l.visit)
	if l.err != nil {
		l.say(message.Message{ID: "folder-unreadable",
			Text: fmt.Sprintf("the content folder cannot be read: %v", cause(l.err)),
			Note: "see that it is there and that you may read it"})
	}
	return l
}

func (l *listing) visit(name string, entry fs.DirEntry, err error) error {
	if err == nil && entry.Type().IsRegular() {
		l.known[name] = true
	}
	switch {
	case err != nil && name != ".":
		l.say(message.Message{ID: "folder-unreadable", Text: fmt.Sprintf("the folder %s cannot be read: %v",
			l.options.called(name), cause(err)), Note: "see that you may read it, or move it out of the content folder"})
		return fs.SkipDir
	case err != nil:
		return err
	case name != "." && strings.HasPrefix(path.Base(name), "."):
		if entry.IsDir() {
			return fs.SkipDir
		}
	case entry.IsDir(), name == siteFileName, name == sourcesFileName:
	case entry.Type()&fs.ModeSymlink != 0 && !l.followable(name):
	case isCalculation(name):
		l.calculations = append(l.calculations, name)
	case path.Ext(name) == ".yml" && isCalculation(strings.TrimSuffix(name, ".yml")+".yaml"):
		l.say(message.Message{ID: "calculation-file", Source: &message.Source{Name: l.options.called(name)},
			Text: "the name of a calculation's file ends in .yaml", Note: "rename it"})
	case path.Ext(name) == ".md":
		l.pages = append(l.pages, name)
	default:
		l.files = append(l.files, name)
	}
	return nil
}

// say keeps a message. It may be fixed by what no name tells of, such as the right to read a folder.
func (l *listing) say(m message.Message) {
	l.said = append(l.said, m)
	l.unsure = true
}

// followable says whether a link of the file system leads to a file inside the content folder. If not, it says so.
func (l *listing) followable(name string) bool {
	l.unsure = true // the file it leads to has a name of its own, or none in this folder
	info, err := fs.Stat(l.options.Content, name)
	if err == nil && info.Mode().IsRegular() {
		return true
	}
	text := "this link leads to no file in the content folder: it leads outside, to nothing, or back to itself"
	if err == nil {
		text = "this is a link to a folder, and such links are not followed"
	}
	l.say(message.Message{ID: "link-of-files", Source: &message.Source{Name: l.options.called(name)}, Text: text,
		Note: "put the files themselves here, or take the link away"})
	return false
}

// isFolder says whether something is listed below a name.
func (l *listing) isFolder(name string) bool {
	for known := range l.known {
		if strings.HasPrefix(known, name+"/") {
			return true
		}
	}
	return false
}

// same says whether two listings list the same.
func (l *listing) same(o *listing) bool {
	return slices.Equal(l.pages, o.pages) && slices.Equal(l.files, o.files)
}

// cause is the reason of a file's error. Its path would be one of this machine.
func cause(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	return err
}

// called is how messages call a file of the content folder.
func (o Options) called(name string) string { return path.Join(o.Name, name) }

func (p *press) called(name string) string { return p.options.called(name) }

func (p *press) say(messages message.List) { p.messages = append(p.messages, messages...) }
