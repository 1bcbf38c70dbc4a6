package epub

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"hash/crc32"
	"io"
	"io/fs"
	"net/url"
	"time"

	"acreleaf/theme"
)

const mimetype = "application/epub+zip"

// day is the day of every file in a book, so that the same text gives the same bytes. Zip knows none before it.
var day = time.Date(1980, time.January, 1, 0, 0, 0, 0, time.UTC)

// wayTo is a path as a reference has it.
func wayTo(path string) string { return (&url.URL{Path: path}).EscapedPath() }

// pack puts the files of a book together.
func (v *volume) pack() ([]byte, error) {
	style, err := fs.ReadFile(theme.Files, "book/"+cssFile)
	if err != nil {
		panic(err) // the theme is part of the program
	}
	var all bytes.Buffer
	z := zip.NewWriter(&all)
	z.RegisterCompressor(zip.Deflate, func(out io.Writer) (io.WriteCloser, error) {
		return flate.NewWriter(out, flate.BestCompression)
	})
	if err := first(z); err != nil {
		return nil, err
	}
	put := func(name string, content []byte) {
		if err == nil {
			err = add(z, name, content)
		}
	}
	written := func(name string, print func(w *bytes.Buffer)) {
		var w bytes.Buffer
		print(&w)
		put(name, w.Bytes())
	}
	put("META-INF/container.xml", []byte(container))
	written(inBook+opfFile, v.opf)
	written(inBook+navFile, v.nav)
	for _, c := range v.chapters {
		written(inBook+c.file, func(w *bytes.Buffer) { v.text(w, c) })
	}
	put(inBook+cssFile, style)
	for _, p := range v.pictures {
		put(inBook+p.path, p.bytes)
	}
	if err != nil {
		return nil, err
	}
	err = z.Close()
	return all.Bytes(), err
}

// first puts the type of the file where it can be read without unpacking: the first file, as it is, with nothing else
// in its header.
func first(z *zip.Writer) error {
	w, err := z.CreateRaw(&zip.FileHeader{
		Name: "mimetype", Method: zip.Store, CRC32: crc32.ChecksumIEEE([]byte(mimetype)),
		CompressedSize64: uint64(len(mimetype)), UncompressedSize64: uint64(len(mimetype)),
	})
	if err == nil {
		_, err = io.WriteString(w, mimetype)
	}
	return err
}

func add(z *zip.Writer, name string, content []byte) error {
	w, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate, Modified: day})
	if err == nil {
		_, err = w.Write(content)
	}
	return err
}
