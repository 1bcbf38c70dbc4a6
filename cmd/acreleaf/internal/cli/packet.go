package cli

import (
	"fmt"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/packet"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

type packetCommand struct {
	Pages []string `arg:"" optional:"" name:"page" help:"Such as guides/soil.md or courses/young; none for all."`
	Books bool     `help:"Put the EPUB of each beside it."`
	To    string   `help:"The folder for these packets and no others (${default})." default:"packet" placeholder:"FOLDER"`
	place
	turn
}

// Run makes the packets. Nothing is put in place when there is a fault.
func (c *packetCommand) Run(t *terminal) error {
	options, err := c.openApart(c.To, packets)
	if err != nil {
		return err
	}
	only, err := c.named(options)
	if err != nil {
		return err
	}
	to, err := c.begin(t, c.To, packets)
	if err != nil {
		return err
	}
	made := sizes{bytes: map[string]int{}}
	_, messages := book.Make(options, packet.Of(options.Content, only, c.Books), func(f output.File) error {
		made.add(f)
		return to.Put(f)
	})
	report, err := t.commit(to, c.To, output.Mark{}, messages)
	if err != nil {
		return err
	}
	n := len(made.bytes)
	fmt.Fprintf(t.out, "%d %s in %s: %d written, %d unchanged, %d removed\n",
		n, plural(n, "file", "files"), c.To, report.Written, report.Unchanged, report.Removed)
	made.tell(t)
	return nil
}

// sizes are those of files, which come from several goroutines at once.
type sizes struct {
	mutex sync.Mutex
	bytes map[string]int
}

func (s *sizes) add(f output.File) {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	s.bytes[f.Path] = len(f.Bytes)
}

// tell prints the sizes of what has all pages, and that of the largest single page.
func (s *sizes) tell(t *terminal) {
	largest := ""
	for name, size := range s.bytes {
		if path.Ext(name) == ".html" && name != packet.WholeFile && (size > s.bytes[largest] ||
			size == s.bytes[largest] && name < largest) {
			largest = name
		}
	}
	for _, name := range []string{largest, packet.WholeFile, packet.ArchiveFile} {
		if size, has := s.bytes[name]; has {
			fmt.Fprintf(t.out, "%8d kB  %s\n", (size+999)/1000, name)
		}
	}
	if s.bytes[packet.WholeFile] > muchForAPhone {
		fmt.Fprintf(t.out, "A small phone takes seconds for each page of %s: give the single files to readers.\n",
			packet.WholeFile)
	}
}

// muchForAPhone is how large a file may be that is read whole at each page, in bytes. A computer takes 0.4 s of
// processor time for so many, and a small phone perhaps six times as long.
const muchForAPhone = 4_000_000

// named gives the files of the pages that were typed, with or without the content folder in front. A folder is all
// pages in it.
func (c *packetCommand) named(o book.Options) ([]string, error) {
	pages := packet.Pages(o.Content)
	var only []string
	var wrong faults
	for _, typed := range c.Pages {
		name := strings.TrimPrefix(path.Clean(filepath.ToSlash(typed)), o.Name+"/")
		before := len(only)
		for _, page := range pages {
			if page == name || page == name+".md" || strings.HasPrefix(page, name+"/") {
				only = append(only, page)
			}
		}
		if len(only) > before {
			continue
		}
		note := "packets are made of the home page, and of those in guides, workshops and courses"
		if near, ok := message.Nearest(strings.TrimSuffix(name, ".md")+".md", pages); ok {
			note = "write " + near
		}
		wrong = append(wrong, fault{fmt.Sprintf("there is no page %q to make a packet of", typed), note})
	}
	if wrong != nil {
		return nil, errUsage{wrong}
	}
	slices.Sort(only)
	return slices.Compact(only), nil
}
