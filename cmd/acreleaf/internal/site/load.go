package site

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// The files of the content folder that are ours to read.
const (
	siteFileName    = "site.yaml"
	sourcesFileName = "sources.yaml"
	homeFileName    = "home.md"
)

// missingFile is the page for an address that is not there, as most servers look for it.
const missingFile = "404.html"

// A draft is a page on its way through the press.
type draft struct {
	name     string // slash path in the content folder
	source   *message.Source
	address  page.Address
	metadata page.Metadata
	doc      *markdown.Document
	work     *worksheet.Page
	hrefs    []string                // by markdown.Link.Index
	defined  []*worksheet.Definition // the calculations that stand in it
	messages message.List

	faulty         bool // its text could not be read, so nothing can be said of what is in it
	rank           int  // its place in the order of the season
	previous, next *draft
}

// load walks the content folder in sorted order, and reads site.yaml and sources.yaml.
func (p *press) load() {
	var messages message.List
	p.site, p.siteFile, messages = config.Load(p.options.Content, siteFileName)
	p.siteFile.Name = p.called(siteFileName)
	for i := range messages {
		if _, err := fs.Stat(p.options.Content, siteFileName); errors.Is(err, fs.ErrNotExist) {
			messages[i].Note = "make it, with the name of your office in it, such as: office: Sorrel Flat Orchard Office"
		}
	}
	p.say(messages)
	p.sources = config.Sources{}
	if _, err := fs.Stat(p.options.Content, sourcesFileName); err == nil {
		sources, source, messages := config.LoadSources(p.options.Content, sourcesFileName)
		source.Name = p.called(sourcesFileName)
		p.sources, p.sourcesFile = sources, source
		p.say(messages)
	}
	err := fs.WalkDir(p.options.Content, ".", p.visit)
	if err != nil {
		p.say(message.List{{ID: "folder-unreadable", Text: fmt.Sprintf("the content folder cannot be read: %v", cause(err)),
			Note: "see that it is there and that you may read it"}})
	}
	if len(p.pages) == 0 && err == nil {
		p.say(message.List{{ID: "no-pages", Text: "there is no page in " + p.options.Name,
			Note: "write one, such as " + p.called("guides/soil.md")}})
	}
}

func (p *press) visit(name string, entry fs.DirEntry, err error) error {
	switch {
	case err != nil && name != ".":
		p.say(message.List{{ID: "folder-unreadable", Text: fmt.Sprintf("the folder %s cannot be read: %v", p.called(name),
			cause(err)), Note: "see that you may read it, or move it out of the content folder"}})
		return fs.SkipDir
	case err != nil:
		return err
	case name != "." && strings.HasPrefix(path.Base(name), "."):
		if entry.IsDir() {
			return fs.SkipDir
		}
	case entry.IsDir(), name == siteFileName, name == sourcesFileName:
	case entry.Type()&fs.ModeSymlink != 0 && !p.followable(name):
	case isCalculation(name):
		p.calculations = append(p.calculations, name)
	case path.Ext(name) == ".yml" && isCalculation(strings.TrimSuffix(name, ".yml")+".yaml"):
		p.say(message.List{{ID: "calculation-file", Source: &message.Source{Name: p.called(name)},
			Text: "the name of a calculation's file ends in .yaml", Note: "rename it"}})
	case path.Ext(name) == ".md":
		p.pages = append(p.pages, &draft{name: name})
	default:
		p.files = append(p.files, name)
	}
	return nil
}

// cause is the reason of a file's error. Its path would be one of this machine.
func cause(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	return err
}

// followable says whether a link of the file system leads to a file inside the content folder. If not, it says so.
func (p *press) followable(name string) bool {
	info, err := fs.Stat(p.options.Content, name)
	if err == nil && info.Mode().IsRegular() {
		return true
	}
	text := "this is a link to something outside of the content folder, or to nothing"
	if err == nil {
		text = "this is a link to a folder, and such links are not followed"
	}
	p.say(message.List{{ID: "link-of-files", Source: &message.Source{Name: p.called(name)}, Text: text,
		Note: "put the files themselves here, or take the link away"}})
	return false
}

// called is how messages call a file of the content folder.
func (p *press) called(name string) string { return path.Join(p.options.Name, name) }

func (p *press) say(messages message.List) { p.messages = append(p.messages, messages...) }

// read reads every page. A worksheet may use a calculation of any page, so that all those are read before any is bound.
func (p *press) read() {
	each(len(p.pages), func(i int) { p.parsePage(p.pages[i]) })
	p.define()
	each(len(p.pages), func(i int) {
		p.bindPage(p.pages[i])
		p.proofPage(p.pages[i])
	})
	for _, d := range p.pages {
		p.say(d.messages)
	}
}

func (p *press) parsePage(d *draft) {
	d.source, d.messages = page.Load(p.options.Content, d.name)
	d.source.Name = p.called(d.name)
	if message.HasFault(d.messages) {
		d.faulty = true
		return
	}
	address, err := page.AddressOf(d.name)
	if err != nil {
		d.messages = append(d.messages, badAddress(d, err))
	}
	d.address = address
	metadata, body, messages := page.Split(d.source)
	d.metadata = metadata
	d.messages = append(d.messages, messages...)
	if err == nil {
		d.messages = append(d.messages, page.CheckLanguage(d.source, address, metadata, p.site.Languages)...)
	}
	d.doc, messages = markdown.Parse(d.source, body)
	d.messages = append(d.messages, messages...)
}

func (p *press) bindPage(d *draft) {
	if d.faulty {
		return
	}
	work, messages := worksheet.Bind(d.doc, p.catalogue)
	d.work = work
	d.messages = append(d.messages, messages...)
}

func badAddress(d *draft, err error) message.Message {
	m := message.Message{ID: "page-name", Source: d.source, Text: err.Error()}
	if named, ok := err.(*page.AddressError); ok {
		m.Text, m.Note = named.Text, named.Note
	}
	return m
}
