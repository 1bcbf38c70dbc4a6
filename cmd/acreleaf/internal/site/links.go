package site

import (
	"fmt"
	"maps"
	"net/url"
	"path"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/render"
)

// resolveLinks turns every link of a page into a way from its address, and reports those that lead nowhere.
func (p *press) resolveLinks(d *draft, index map[string]*draft) {
	d.hrefs = make([]string, len(d.doc.Links))
	for _, link := range d.doc.Links {
		d.hrefs[link.Index] = p.resolve(d, link, index)
	}
}

func (p *press) resolve(d *draft, link *markdown.Link, index map[string]*draft) string {
	destination, fragment, _ := strings.Cut(link.Destination, "#")
	switch {
	case hasScheme(destination):
		return link.Destination // markdown refuses the schemes that run code
	case strings.HasPrefix(destination, "/"):
		p.fault(d, link.DestinationSpan, "link-outside",
			fmt.Sprintf("%q begins with a slash, so it starts at the top of the web server", destination),
			p.wayFromHere(d, strings.TrimPrefix(destination, "/"), index))
		return ""
	case destination == "":
		return p.anchor(d, d, link, fragment)
	}
	plain, err := url.PathUnescape(destination)
	if err != nil {
		plain = destination
	}
	name := path.Join(path.Dir(d.name), plain)
	switch {
	case strings.Contains(plain, `\`):
		p.fault(d, link.DestinationSpan, "link-broken", fmt.Sprintf(`%s has a \ in it`, destination),
			"put / between folders")
		return ""
	case name == ".." || strings.HasPrefix(name, "../"):
		p.fault(d, link.DestinationSpan, "link-outside", fmt.Sprintf("%q leaves the content folder", destination),
			"link to a page inside it, or write a whole web address")
		return ""
	}
	if target := index[name]; target != nil {
		if link.Image {
			p.fault(d, link.DestinationSpan, "image-page", fmt.Sprintf("%q is a page, not a picture", destination),
				"take the ! away to link to it")
		}
		return p.anchor(d, target, link, fragment)
	}
	if slices.Contains(p.files, name) {
		p.used[name] = true
		return d.address.ToPath(name)
	}
	if p.isFolder(name, index) {
		p.fault(d, link.DestinationSpan, "link-folder", fmt.Sprintf("%q is a folder, not a page", destination),
			"write the name of a page in it")
		return ""
	}
	p.fault(d, link.DestinationSpan, "link-broken", fmt.Sprintf("there is no file %q in %s", name, p.options.Name),
		p.wayFromHere(d, name, index))
	return ""
}

// isFolder says whether pages or other files stand below a name.
func (p *press) isFolder(name string, index map[string]*draft) bool {
	for known := range index {
		if name == "." || strings.HasPrefix(known, name+"/") {
			return true
		}
	}
	return slices.ContainsFunc(p.files, func(file string) bool { return strings.HasPrefix(file, name+"/") })
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
func (p *press) wayFromHere(d *draft, name string, index map[string]*draft) string {
	names := slices.Concat(slices.Sorted(maps.Keys(index)), p.files)
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
	return "write the way from this file to one that is there, such as " + wayBetween(d.name, names[0])
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

// anchor is the way to a page, and to the heading or worksheet of it that the fragment names.
func (p *press) anchor(d, target *draft, link *markdown.Link, fragment string) string {
	way := ""
	if target != d {
		way = d.address.To(target.address)
	}
	if fragment == "" {
		if way == "" {
			return "#"
		}
		return way
	}
	if target.faulty {
		return way
	}
	for _, anchor := range anchors(target) {
		if anchor == fragment {
			return way + "#" + fragment
		}
	}
	note := "link to the page, without #" + fragment
	if near, ok := message.Nearest(fragment, anchors(target)); ok {
		note = "did you mean #" + near + "?"
	}
	p.fault(d, link.DestinationSpan, "anchor-broken",
		fmt.Sprintf("%s has no heading #%s", target.source.Name, fragment), note)
	return ""
}

// anchors lists what a link can point at in a page: its headings and its worksheets.
func anchors(d *draft) []string {
	var list []string
	for _, h := range d.doc.Headings {
		list = append(list, h.ID)
	}
	for _, b := range d.doc.Blocks {
		if b.Name != "" && b.Construct == "worksheet" {
			list = append(list, render.Anchor(b.Name))
		}
	}
	return list
}

// sourcesAddress is where the bibliography of a language stands.
func sourcesAddress(language string) page.Address {
	return page.Address{Language: language, Name: "sources"}
}
