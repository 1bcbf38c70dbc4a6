package book

import (
	"fmt"
	"maps"
	"net/url"
	"path"
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/media"
	"acreleaf/cmd/acreleaf/internal/memo"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A linked is what the links of a page lead to.
type linked struct {
	targets []Target   // by markdown.Link.Index
	parts   []anchored // the links that lead to a part of a page
	uses    []string   // the files of the content folder that it shows or links to
	said    message.List
}

// anchored is a link that leads to a part of a page. Whether the part is there is seen when all pages are read.
type anchored struct {
	place            message.Span
	target, fragment string
}

// anchoredFrom is what the messages on such links depend on.
type anchoredFrom struct {
	linked *linked
	parts  *parts
}

// A parts is all that a link can point at. One that did not change is the same one as before.
type parts struct {
	tree    *tree
	anchors [][]string // of each page, as the folder is walked
}

func (p *parts) same(o *parts) bool {
	return p.tree == o.tree && slices.EqualFunc(p.anchors, o.anchors, slices.Equal)
}

// linkPage finds what every link of a page leads to, and reports those that lead nowhere. It is done when the names of
// all pages are known, and again when a picture that it shows may have another size.
func (p *press) linkPage(d *draft) {
	if l := d.linked.Kept(); l != nil && slices.ContainsFunc(l.uses, p.changes.stale) {
		d.linked = memo.Result[*tree, linked]{}
	}
	d.linked.Get(p.tree, func() linked {
		l := &linking{library: p.library, from: d, found: linked{targets: make([]Target, len(d.parsed.links))}}
		for _, link := range d.parsed.links {
			l.found.targets[link.Index] = l.resolve(link)
		}
		var fragments []*string
		for i := range l.found.parts {
			fragments = append(fragments, &l.found.parts[i].fragment)
		}
		pack(fragments)
		return l.found
	})
}

// A linking is the links of a page while they are looked at.
type linking struct {
	*library
	from  *draft
	found linked
}

func (l *linking) unlinked(link *markdown.Link, id, text, note string) {
	l.found.said = append(l.found.said, l.from.fault(link.DestinationSpan, id, text, note))
}

func (l *linking) resolve(link *markdown.Link) Target {
	destination, fragment, _ := strings.Cut(link.Destination, "#")
	switch {
	case hasScheme(destination):
		return Target{Kind: Outside, Text: link.Destination} // markdown refuses the schemes that run code
	case strings.HasPrefix(destination, "/"):
		l.unlinked(link, "link-outside",
			fmt.Sprintf("%q begins with a slash, so it starts at the top of the web server", destination),
			l.wayFromHere(l.from, link, strings.TrimPrefix(destination, "/")))
		return Target{}
	case destination == "" && fragment == "":
		l.unlinked(link, "link-broken", "this link leads nowhere", "write an address in ( ), or take the brackets away")
		return Target{}
	case destination == "":
		return l.target(l.from, link, fragment)
	}
	plain, err := url.PathUnescape(destination)
	if err != nil {
		plain = destination
	}
	name := path.Join(path.Dir(l.from.name), plain)
	switch {
	case strings.Contains(plain, `\`):
		l.unlinked(link, "link-broken", fmt.Sprintf(`%s has a \ in it`, destination), "put / between folders")
		return Target{}
	case name == ".." || strings.HasPrefix(name, "../"):
		l.unlinked(link, "link-outside", fmt.Sprintf("%q leaves the content folder", destination),
			"link to a page inside it, or write a whole web address")
		return Target{}
	}
	if target := l.index[name]; target != nil {
		if link.Image {
			l.unlinked(link, "image-page", fmt.Sprintf("%q is a page, not a picture", destination),
				"take the ! away to link to it")
		}
		return l.target(target, link, fragment)
	}
	if slices.Contains(l.listing.files, name) {
		return l.file(link, name)
	}
	if l.isFolder(name) {
		l.unlinked(link, "link-folder", fmt.Sprintf("%q is a folder, not a page", destination),
			"write the name of a page in it")
		return Target{}
	}
	text, note := fmt.Sprintf("there is no file %q in %s", name, l.options.Name), l.wayFromHere(l.from, link, name)
	if l.looksTheSame(name) {
		text += "; the one that looks the same has its accents written in another way"
		note = "rename that file, with letters without accents, and write the new name here"
	}
	l.unlinked(link, "link-broken", text, note)
	return Target{}
}

// looksTheSame says whether the folder has a name that differs in nothing that a person sees.
func (b *library) looksTheSame(name string) bool {
	same := func(known string) bool { return norm.NFC.String(known) == norm.NFC.String(name) }
	return slices.ContainsFunc(b.listing.files, same) || slices.ContainsFunc(b.listing.pages, same)
}

// file is a file of the content folder that a page shows or links to.
func (l *linking) file(link *markdown.Link, name string) Target {
	kind, known := media.Of(name)
	switch {
	case !known:
		text, note := media.Refused(name)
		l.unlinked(link, "file-kind", text, note)
		return Target{}
	case link.Image && kind.Use != media.Picture:
		l.unlinked(link, "image-kind", fmt.Sprintf("%q is no picture", link.Destination), "take the ! away to link to it")
		return Target{}
	}
	l.found.uses = append(l.found.uses, name)
	target := Target{Kind: ToFile, Text: name}
	if link.Image {
		target.Size = l.sizeOf(kind, name)
	}
	return target
}

// sizeOf reads the size of a picture. One that cannot be read has none, and is reported where files are looked into.
func (l *linking) sizeOf(kind media.Kind, name string) media.Size {
	file, err := l.options.Content.Open(name)
	if err != nil {
		return media.Size{}
	}
	defer func() { _ = file.Close() }() // it was only read
	return kind.SizeOf(file)
}

// isFolder says whether pages or other files are below a name.
func (b *library) isFolder(name string) bool {
	for known := range b.index {
		if name == "." || strings.HasPrefix(known, name+"/") {
			return true
		}
	}
	return slices.ContainsFunc(b.listing.files, func(file string) bool { return strings.HasPrefix(file, name+"/") })
}

var dropped = strings.NewReplacer("\t", "", "\n", "", "\r", "")

// hasScheme says whether an address begins with a scheme (RFC 3986, 3.1), as a browser reads it: it drops white space
// in front, and tabs and line ends anywhere.
func hasScheme(address string) bool {
	text, _, found := strings.Cut(address, ":")
	if !found {
		return false
	}
	if strings.ContainsAny(text, " \t\r\n") {
		text = dropped.Replace(strings.TrimLeft(text, " \t\r\n"))
	}
	for i, c := range []byte(text) {
		letter := c|0x20 >= 'a' && c|0x20 <= 'z'
		if !letter && (i == 0 || !strings.ContainsRune("0123456789+-.", rune(c))) {
			return false
		}
	}
	return text != ""
}

// wayFromHere is a note that gives the way to the file that was most likely meant: one of the same name in another
// folder, or one of nearly the same name in the same folder.
func (b *library) wayFromHere(d *draft, link *markdown.Link, name string) string {
	names := slices.Concat(slices.Sorted(maps.Keys(b.index)), b.listing.files)
	folder, base := path.Split(name)
	var beside []string
	for _, known := range names {
		knownFolder, knownBase := path.Split(known)
		if knownBase == base {
			return "write " + wayBetween(d.name, known)
		}
		if knownFolder == folder {
			beside = append(beside, knownBase)
		}
	}
	if near, ok := message.Nearest(base, beside); ok {
		return "did you mean " + wayBetween(d.name, folder+near) + "?"
	}
	if link.Image {
		return "save the picture in content, and write the way to it from this file"
	}
	if whole := markdown.WholeAddress(link.Destination); whole != "" {
		return "write " + whole
	}
	example := d.name
	for _, known := range names {
		if other := b.index[known]; other != nil && other != d && other.address.Language == d.address.Language {
			example = known
			break
		}
	}
	return "write the way from this file to one that is there, such as " + wayBetween(d.name, example)
}

// wayBetween is the relative path from one file of the content folder to another.
func wayBetween(from, to string) string {
	a, b := strings.Split(path.Dir(from), "/"), strings.Split(to, "/")
	if a[0] == "." {
		a = nil
	}
	same := 0
	for same < len(a) && same < len(b)-1 && a[same] == b[same] {
		same++
	}
	return strings.Repeat("../", len(a)-same) + strings.Join(b[same:], "/")
}

// target is a page, or the heading or worksheet of it that the fragment names.
func (l *linking) target(to *draft, link *markdown.Link, fragment string) Target {
	if fragment != "" {
		l.found.parts = append(l.found.parts, anchored{link.DestinationSpan, to.name, fragment})
	}
	return Target{Kind: ToPage, Page: to.address, Text: fragment}
}

// checkAnchors reports the links of a page that lead to a part that the other page does not have.
func (b *library) checkAnchors(d *draft, all *parts) {
	if d.faulty {
		return
	}
	d.anchored.Get(anchoredFrom{d.linked.Kept(), all}, func() (said message.List) {
		for _, a := range d.linked.Kept().parts {
			target := b.index[a.target]
			if target.faulty || slices.Contains(target.anchors(), a.fragment) {
				continue
			}
			note := "link to the page, without #" + a.fragment
			if near, ok := message.Nearest(a.fragment, target.anchors()); ok {
				note = "did you mean #" + near + "?"
			}
			said = append(said, d.fault(a.place, "anchor-broken",
				fmt.Sprintf("%s has no heading #%s", target.source.Name, a.fragment), note))
		}
		return said
	})
}

// anchors are those of a page that could be parsed.
func (d *draft) anchors() []string {
	if d.parsed == nil {
		return nil
	}
	return d.parsed.anchors
}

// anchorsOf lists what a link can point at in a page: its headings and its worksheets.
func anchorsOf(doc *markdown.Document) []string {
	var list []string
	for _, h := range doc.Headings {
		if !doc.ForLeader(h.Span) {
			list = append(list, h.ID)
		}
	}
	for _, b := range doc.Blocks {
		if b.Name != "" && b.Construct.Row().Numbers {
			list = append(list, construct.Anchor(b.Name))
		}
	}
	var texts []*string
	for i := range list {
		texts = append(texts, &list[i])
	}
	pack(texts)
	return list
}
