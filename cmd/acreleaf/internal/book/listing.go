package book

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"acreleaf/cmd/acreleaf/internal/folder"
	"acreleaf/cmd/acreleaf/internal/message"
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
	case folder.Hidden(name):
		if entry.IsDir() {
			return fs.SkipDir
		}
	case entry.IsDir():
	case entry.Type()&fs.ModeSymlink != 0 && !l.followable(name):
	case name == siteFileName, name == sourcesFileName: // what is wrong with them is told when they are read
	case entry.Type()&(fs.ModeType&^fs.ModeSymlink) != 0:
		l.sayNotPlain(name, entry.Type())
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
	switch {
	case err == nil && info.IsDir():
		text = "this is a link to a folder, and such links are not followed"
	case err == nil:
		text = "this is a link to what is no plain file: " + message.NotPlain(info.Mode()).Error()
	}
	l.say(message.Message{ID: "link-of-files", Source: &message.Source{Name: l.options.called(name)}, Text: text,
		Note: "put the files themselves here, or take the link away"})
	return false
}

// sayNotPlain reports what nobody can read to its end.
func (l *listing) sayNotPlain(name string, mode fs.FileMode) {
	l.say(message.Message{ID: "file-plain", Source: &message.Source{Name: l.options.called(name)},
		Text: "only plain files are read: " + message.NotPlain(mode).Error(), Note: "move it out of the content folder"})
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

// cause is the reason of a file's error. Its path would be one of this machine.
func cause(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	return err
}
