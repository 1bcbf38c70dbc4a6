package packet

import (
	"archive/zip"
	"bytes"
	"maps"
	"slices"
	"time"
)

// day is the day of every file in an archive, so that the same site gives the same bytes. Zip knows none before it.
var day = time.Date(1980, time.January, 1, 0, 0, 0, 0, time.UTC)

// archive is the site as it is pressed.
func (m *maker) archive() []byte {
	var all bytes.Buffer
	z := zip.NewWriter(&all)
	for _, name := range slices.Sorted(maps.Keys(m.files)) {
		w, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate, Modified: day})
		if err == nil {
			_, err = w.Write(m.files[name]())
		}
		if err != nil {
			panic(err) // nothing fails in memory
		}
	}
	if err := z.Close(); err != nil {
		panic(err)
	}
	return all.Bytes()
}
