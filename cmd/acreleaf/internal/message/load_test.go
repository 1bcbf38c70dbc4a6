package message

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"
	"testing/iotest"
	"time"

	"github.com/google/go-cmp/cmp"
)

func TestLoad(t *testing.T) {
	for name, test := range map[string]struct{ text, want string }{
		"good":    {"\uFEFFtítulo\r\n", ""},
		"empty":   {"", ""},
		"largest": {strings.Repeat("a", MaxSize), ""},
		"invalid": {"one\ntw\xe9o \xff\n", `a.md:2:3: error: byte 7 of this file, 0xE9, is not UTF-8 text [not-utf-8]
    2 | tw�o �
      |   ^
   note: save the file again with the encoding UTF-8, then look at the letter in this place
1 error
`},
		"nul": {"a\x00b\xff", `a.md:1:2: error: there is a NUL byte here, which no text has [nul-byte]
    1 | a␀b�
      |  ^
   note: delete it; if the file is not text, move it out of this folder
a.md:1:4: error: byte 4 of this file, 0xFF, is not UTF-8 text [not-utf-8]
    1 | a␀b�
      |    ^
   note: save the file again with the encoding UTF-8, then look at the letter in this place
2 errors
`},
		"utf-16": {"\xff\xfea\x00", `a.md:1:1: error: this file is saved as UTF-16 [not-utf-8]
    1 | ��a␀
      | ^~
   note: save it again with the encoding UTF-8
1 error
`},
		"large": {"first line\r\n" + strings.Repeat("a", MaxSize),
			`a.md:1:1: error: this file is larger than the 4 MB that a page or a list may have [file-too-large]
    1 | first line
      | ^~~~~~~~~~
   note: split it into several files, or move it out of this folder
1 error
`},
	} {
		t.Run(name, func(t *testing.T) {
			src, l := Load(fstest.MapFS{"a.md": {Data: []byte(test.text)}}, "a.md")
			Sort(l)
			if diff := cmp.Diff(test.want, printed(l)); diff != "" {
				t.Errorf("printed (-want +got):\n%s", diff)
			}
			if test.want == "" && string(src.Text) != test.text {
				t.Error("the text is not what the file holds")
			}
		})
	}
}

func TestLoadUnreadable(t *testing.T) {
	files := fstest.MapFS{"folder/a.md": {}}
	for name, want := range map[string]string{
		"none.md": "none.md:1:1: error: this file is not there [file-missing]",
		"folder":  "folder:1:1: error: this is a folder, and a file is needed [file-unreadable]",
	} {
		src, l := Load(files, name)
		if first, _, _ := strings.Cut(printed(l), "\n"); src == nil || first != want {
			t.Errorf("got %q, want %q", first, want)
		}
	}
	badSector := &fs.PathError{Op: "read", Path: "/secret/place", Err: errors.New("bad sector")}
	for want, disk := range map[string]oneFile{
		"a.md:1:1: error: this file cannot be read: bad sector [file-unreadable]": {reader: iotest.ErrReader(badSector)},
		"a.md:1:1: error: this file may not be read [file-unreadable]":            {openError: fs.ErrPermission},
	} {
		_, l := Load(disk, "a.md")
		if first, _, _ := strings.Cut(printed(l), "\n"); first != want {
			t.Errorf("got %q, want %q", first, want)
		}
	}
}

// oneFile is a file system with one file, whose size may be wrong.
type oneFile struct {
	reader    io.Reader
	size      int64
	openError error
}

func (f oneFile) Open(string) (fs.File, error) { return openFile{oneFile: f}, f.openError }
func (f openFile) Stat() (fs.FileInfo, error)  { return sizeInfo{size: f.size}, nil }
func (f openFile) Read(b []byte) (int, error)  { return f.reader.Read(b) }
func (f openFile) Close() error                { return nil }
func (i sizeInfo) Size() int64                 { return i.size }
func (i sizeInfo) IsDir() bool                 { return false }
func (i sizeInfo) Mode() fs.FileMode           { return 0 }
func (i sizeInfo) ModTime() time.Time          { return time.Time{} }

type openFile struct{ oneFile }

type sizeInfo struct {
	fs.FileInfo
	size int64
}

// A file of 50 MB is refused by its size: hardly anything of it is read. One that hides its size is read to the limit.
func TestLoadReadsNoMoreThanItMust(t *testing.T) {
	for name, test := range map[string]struct {
		size int64
		most int64
	}{"by its size": {50 << 20, 4096}, "size not told": {0, MaxSize + 4096}} {
		content := &countingReader{reader: bytes.NewReader(bytes.Repeat([]byte("a"), 50<<20))}
		_, l := Load(oneFile{reader: content, size: test.size}, "a.md")
		if len(l) != 1 || l[0].ID != "file-too-large" || content.count > test.most {
			t.Errorf("%s: %d bytes read, messages %v", name, content.count, l)
		}
	}
}

type countingReader struct {
	reader io.Reader
	count  int64
}

func (r *countingReader) Read(b []byte) (int, error) {
	n, err := r.reader.Read(b)
	r.count += int64(n)
	return n, err
}

// A file that another program is writing is read again, and told of when that does not end.
func TestLoadChanging(t *testing.T) {
	for name, test := range map[string]struct {
		sizes, times []int // of each look at the file, before and after every reading; the last stays
		want         string
	}{
		"still":        {[]int{1}, []int{1}, ""},
		"grown once":   {[]int{1, 2}, []int{1}, ""},
		"written once": {[]int{1}, []int{1, 2}, ""},
		"grown twice":  {[]int{1, 2, 2, 3}, []int{1}, ""},
		"written on":   {[]int{1}, []int{1, 2, 3, 4, 5, 6}, "file-changing"},
		"grows on":     {[]int{1, 2, 3, 4, 5, 6}, []int{1}, "file-changing"},
	} {
		looks := 0
		src, l := Load(changing{text: "text", sizes: test.sizes, times: test.times, looks: &looks}, "a.md")
		switch {
		case test.want == "" && (len(l) > 0 || string(src.Text) != "text"):
			t.Errorf("%s: %q, %v", name, src.Text, l)
		case test.want != "" && (len(l) != 1 || l[0].ID != test.want || len(src.Text) > 0):
			t.Errorf("%s: %q, %v", name, src.Text, l)
		}
	}
}

// changing is a file system with one file that another program writes.
type changing struct {
	text         string
	sizes, times []int
	looks        *int
}

func (c changing) Open(string) (fs.File, error) {
	return &changingFile{changing: c, Reader: strings.NewReader(c.text)}, nil
}

type changingFile struct {
	changing
	*strings.Reader
}

func (f *changingFile) Close() error { return nil }

func (f *changingFile) Stat() (fs.FileInfo, error) {
	at := *f.looks
	*f.looks++
	return changingInfo{size: f.sizes[min(at, len(f.sizes)-1)], written: f.times[min(at, len(f.times)-1)]}, nil
}

type changingInfo struct {
	fs.FileInfo
	size, written int
}

func (i changingInfo) Size() int64        { return int64(i.size) }
func (i changingInfo) Mode() fs.FileMode  { return 0 }
func (i changingInfo) IsDir() bool        { return false }
func (i changingInfo) ModTime() time.Time { return time.Unix(int64(i.written), 0) }
