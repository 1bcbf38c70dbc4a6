package message

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"unicode/utf8"
)

// MaxSize is the largest text file that is read, in bytes. It also bounds the time a single file can take.
const MaxSize = 4 << 20

// readings is how often a file is read that another program writes at the same time.
const readings = 3

// Load reads a text file and refuses what no author means to write: more than MaxSize bytes (judged by its size, only
// its first line is read), text that is not UTF-8, and NUL bytes. The source is never nil, so that the caller can
// place messages of its own; after a fault it is not to be used for anything else.
func Load(fsys fs.FS, name string) (*Source, List) {
	src := &Source{Name: name}
	text, err := read(fsys, name)
	for again := 1; again < readings && errors.Is(err, errChanging); again++ {
		text, err = read(fsys, name)
	}
	var large *tooLarge
	switch {
	case errors.As(err, &large):
		src.Text = large.firstLine
		return src, List{{ID: "file-too-large", Source: src, Span: Span{0, len(src.Text)},
			Text: fmt.Sprintf("this file is larger than the %d MB that a page or a list may have", MaxSize>>20),
			Note: "split it into several files, or move it out of this folder"}}
	case err != nil:
		return src, List{unreadable(src, err)}
	}
	src.Text = text
	return src, checkText(src)
}

type tooLarge struct{ firstLine []byte }

func (e *tooLarge) Error() string { return "file too large" }

func read(fsys fs.FS, name string) ([]byte, error) {
	f, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }() // it was only read
	info, err := f.Stat()
	if err != nil {
		return nil, err
	}
	if info.IsDir() {
		return nil, errFolder
	}
	if !info.Mode().IsRegular() {
		return nil, NotPlain(info.Mode())
	}
	if info.Size() > MaxSize {
		return nil, &tooLarge{firstLine(f)}
	}
	text, err := readAll(f, info.Size())
	if err != nil {
		return nil, err
	}
	if len(text) > MaxSize {
		return nil, &tooLarge{firstLine(bytes.NewReader(text))}
	}
	after, err := f.Stat()
	if err != nil {
		return nil, err
	}
	if after.Size() != info.Size() || !after.ModTime().Equal(info.ModTime()) {
		return nil, errChanging // it may be half of the old text and half of the new
	}
	return text, nil
}

// readAll reads a file of that size into no more room than it takes, since the texts of all pages are in
// memory at once. The size may be wrong (a pipe, a file that grows), so there is a limit.
func readAll(f io.Reader, size int64) ([]byte, error) {
	text := make([]byte, size+1) // one more, to find the end
	n, err := io.ReadFull(f, text)
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return text[:n], nil
	}
	if err != nil {
		return nil, err
	}
	rest, err := io.ReadAll(io.LimitReader(f, MaxSize))
	return append(text, rest...), err
}

// firstLine reads what is needed to show where the message points; what cannot be read is not shown.
func firstLine(r io.Reader) []byte {
	start, _ := io.ReadAll(io.LimitReader(r, 120))
	line, _, _ := bytes.Cut(start, []byte("\n"))
	return bytes.TrimSuffix(line, []byte("\r"))
}

var (
	errFolder   = errors.New("it is a folder")
	errChanging = errors.New("it changes")
)

// NotPlain is the error of reading what is no plain file.
type NotPlain fs.FileMode

// Error says what it is.
func (e NotPlain) Error() string {
	mode := fs.FileMode(e)
	switch {
	case mode&fs.ModeNamedPipe != 0:
		return "it is a pipe, which another program would have to fill"
	case mode&fs.ModeSocket != 0:
		return "it is a socket, by which programs talk to each other"
	case mode&fs.ModeDevice != 0:
		return "it is a device of this computer"
	}
	return "it is no plain file"
}

func unreadable(src *Source, err error) Message {
	m := Message{ID: "file-unreadable", Source: src}
	var not NotPlain
	switch {
	case errors.As(err, &not):
		m.ID, m.Text, m.Note = "file-plain", "only plain files are read: "+not.Error(), "move it out of the content folder"
	case errors.Is(err, fs.ErrNotExist):
		m.ID, m.Text, m.Note = "file-missing", "this file is not there", "make it, or correct the name"
	case errors.Is(err, fs.ErrPermission):
		m.Text, m.Note = "this file may not be read", "give yourself the right to read it"
	case errors.Is(err, errChanging):
		return Changing(src)
	case errors.Is(err, errFolder):
		m.Text, m.Note = "this is a folder, and a file is needed", "rename the folder"
	default:
		// The path in the error would name a place on this machine; the message has the place already.
		var path *fs.PathError
		if errors.As(err, &path) {
			err = path.Err
		}
		m.Text, m.Note = "this file cannot be read: "+err.Error(), "see that the disk is there and try again"
	}
	return m
}

// Changing reports a file that was another one when it was read again.
func Changing(src *Source) Message {
	return Message{ID: "file-changing", Source: src, Text: "another program writes this file while it is read",
		Note: "wait until it is saved, then try again"}
}

func checkText(src *Source) List {
	text := src.Text
	if bytes.HasPrefix(text, []byte("\xFF\xFE")) || bytes.HasPrefix(text, []byte("\xFE\xFF")) {
		return List{{ID: "not-utf-8", Source: src, Span: Span{0, 2}, Text: "this file is saved as UTF-16",
			Note: "save it again with the encoding UTF-8"}}
	}
	var l List
	if at := invalid(text); at >= 0 {
		l = append(l, Message{ID: "not-utf-8", Source: src, Span: Span{at, at + 1},
			Text: fmt.Sprintf("byte %d of this file, 0x%02X, is not UTF-8 text", at+1, text[at]),
			Note: "save the file again with the encoding UTF-8, then look at the letter in this place"})
	}
	if at := bytes.IndexByte(text, 0); at >= 0 {
		l = append(l, Message{ID: "nul-byte", Source: src, Span: Span{at, at + 1},
			Text: "there is a NUL byte here, which no text has",
			Note: "delete it; if the file is not text, move it out of this folder"})
	}
	return l
}

// invalid gives the offset of the first byte that is not UTF-8, or -1.
func invalid(text []byte) int {
	if utf8.Valid(text) {
		return -1
	}
	for at := 0; ; {
		r, size := utf8.DecodeRune(text[at:])
		if r == utf8.RuneError && size <= 1 {
			return at
		}
		at += size
	}
}
