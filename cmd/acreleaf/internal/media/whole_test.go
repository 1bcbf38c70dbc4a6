package media

import (
	"archive/zip"
	"bytes"
	"errors"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

// wholes are small files of every kind that is looked through, whole.
func wholes(t *testing.T) map[string]string {
	picture := image.NewPaletted(image.Rect(0, 0, 30, 20), color.Palette{color.Black, color.White})
	picture.Pix[7] = 1
	var drawn, photo, moving, archive bytes.Buffer
	z := zip.NewWriter(&archive)
	inside, err := z.Create("a.txt")
	if err == nil {
		_, err = io.WriteString(inside, "a")
	}
	if err := errors.Join(err, z.Close(), png.Encode(&drawn, picture), jpeg.Encode(&photo, picture, nil),
		gif.EncodeAll(&moving, &gif.GIF{Image: []*image.Paletted{picture, picture}, Delay: []int{1, 1}})); err != nil {
		t.Fatal(err)
	}
	zipped := archive.String()
	return map[string]string{
		"a.png": drawn.String(), "a.jpg": photo.String(), "a.jpeg": photo.String(), "a.gif": moving.String(),
		"a.zip": zipped, "a.docx": zipped, "a.xlsx": zipped, "a.epub": zipped,
		"a.webp": "RIFF\x18\x00\x00\x00WEBPVP8L\x0b\x00\x00\x00\x2f\x1d\xc0\x04\x00" + strings.Repeat("\x00", 7),
		"a.avif": "\x00\x00\x00\x10ftypavif\x00\x00\x00\x00\x00\x00\x00\x0cmeta\x00\x00\x00\x00\x00\x00\x00\x0amdat\x01\x02",
		"a.mp4": "\x00\x00\x00\x10ftypisom\x00\x00\x00\x00" +
			"\x00\x00\x00\x01mdat\x00\x00\x00\x00\x00\x00\x00\x12\x01\x02\x00\x00\x00\x0amoov\x01\x02",
		"a.webm": "\x1a\x45\xdf\xa3\x83\x01\x02\x03\x18\x53\x80\x67\x40\x02\x01\x02",
		"a.mp3":  "ID3\x04\x00\x00\x00\x00\x01\x00" + strings.Repeat("\x00", 128) + "\xff\xfb",
		"a.pdf":  "%PDF-1.7\n1 0 obj\nendobj\nstartxref\n9\n%%EOF",
	}
}

func damageOf(t *testing.T, name string, file io.Reader) string {
	t.Helper()
	kind, known := Of(name)
	if !known {
		t.Fatalf("%s has no kind", name)
	}
	said, err := kind.CheckWhole(file)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if len(said) == 0 {
		return ""
	}
	if len(said) > 1 || said[0].ID != "file-damaged" || said[0].Note == "" {
		t.Errorf("%s: %v", name, said)
	}
	return strings.TrimPrefix(said[0].Text, "this file is damaged: ")
}

// Every kind that is looked through has a whole file here. It is taken whole and with something behind it, and refused
// wherever it is cut off.
func TestCutOff(t *testing.T) {
	files := wholes(t)
	for _, k := range Kinds {
		name := "a" + k.Ending
		text, here := files[name]
		if here != (k.whole != nil) {
			t.Errorf("%s: a file %v, looked through %v", name, here, k.whole != nil)
		}
		if !here {
			continue
		}
		if said := damageOf(t, name, strings.NewReader(text)); said != "" {
			t.Errorf("%s is whole: %s", name, said)
		}
		if k.Use != Play && k.Ending != ".avif" { // boxes go on to the end
			if said := damageOf(t, name, strings.NewReader(text+"more")); said != "" {
				t.Errorf("%s with more behind it: %s", name, said)
			}
		}
		for n := range len(text) {
			if said := damageOf(t, name, strings.NewReader(text[:n])); said == "" {
				t.Errorf("%s, cut off after %d of %d bytes, is taken", name, n, len(text))
			}
		}
	}
}

func TestDamaged(t *testing.T) {
	whole := wholes(t)
	drawn := whole["a.png"]
	at := strings.Index(drawn, "IDAT")
	length := 12 + int(drawn[at-1])
	for _, c := range []struct{ name, text, want string }{
		{"a.png", "\x89PNG\r\n\x1a\n", string(cutOff)},
		{"a.png", strings.Replace(drawn, "IDAT", "IDAU", 1), string(changed)},
		{"a.png", drawn[:at+6] + "?" + drawn[at+7:], string(changed)},
		{"a.png", drawn[:at-4] + drawn[at-4+length:], string(noPicture)},
		{"a.png", drawn[:8] + drawn[8+25:], string(changed)},
		{"a.jpg", "\xff\xd8\xff\xd9", string(noPicture)},
		{"a.jpg", "\xff\xd8\xff\xe0\x00\x01\xff\xd9", string(changed)},
		{"a.gif", "GIF89a\x01\x00\x01\x00\x00\x00\x00;", string(noPicture)},
		{"a.gif", "GIF89a\x01\x00\x01\x00\x00\x00\x00?", string(changed)},
		{"a.webp", "RIFF\x04\x00\x00\x00WEBP", string(noPicture)},
		{"a.webp", "RIFF\x0c\x00\x00\x00WEBPVP8L\x09\x00\x00\x00" + strings.Repeat("\x00", 10), string(changed)},
		{"a.avif", "\x00\x00\x00\x10ftypavif\x00\x00\x00\x00", string(noPicture)},
		{"a.avif", "\x00\x00\x00\x10ftypavif\x00\x00\x00\x00\x00\x00\x00\x00mdat\x00", string(noPicture)},
		{"a.avif", "\x00\x00\x00\x10ftypavif\x00\x00\x00\x00\x00\x00\x00\x02mdat", string(changed)},
		{"a.avif", "\x00\x00\x00\x10ftypavif\x00\x00\x00\x00" + // a small one, in the box about what is in the file
			"\x00\x00\x00\x16meta\x00\x00\x00\x00\x00\x00\x00\x0aidat\x01\x02", ""},
		{"a.mp4", "\x00\x00\x00\x10ftypisom\x00\x00\x00\x00", string(noFilm)},
		{"a.webm", "\x1a\x45\xdf\xa3\x00", string(changed)},
		{"a.webm", "\x1a\x45\xdf\xa3\x81\x01\x18\x53\x80\x66\x81\x01", string(changed)},
		{"a.webm", "\x1a\x45\xdf\xa3\x81\x01\x18\x53\x80\x67\xff", string(cutOff)},
		{"a.zip", whole["a.zip"][20:], string(cutOff)},
		{"a.pdf", "%PDF-1.7\n%%EOF" + strings.Repeat(" ", mostTail), string(cutOff)},
		{"a.pdf", "%PDF-1.7\n" + strings.Repeat(" ", 3*mostTail) + "%%EOF\n", ""},
		{"a.webm", "\x1a\x45\xdf\xa3\x81\x01\x18\x53\x80\x67\x01\xff\xff\xff\xff\xff\xff\xff\x01", ""}, // of no known length
		{"a.mp3", "ID3\x04\x00\x00\x00\x00\x00\x00" + strings.Repeat("\x00", 99), string(cutOff)},
		{"a.csv", "", ""}, {"a.svg", "<svg", ""}, // others look at these
	} {
		if got := damageOf(t, c.name, strings.NewReader(c.text)); got != c.want {
			t.Errorf("%s, %.40q: %q, want %q", c.name, c.text, got, c.want)
		}
	}
}

// An error of the disk is no damage of the file.
func TestDisk(t *testing.T) {
	gone := errors.New("gone")
	for name, text := range wholes(t) {
		kind, _ := Of(name)
		file := io.MultiReader(strings.NewReader(text[:len(text)/2]), iotest.ErrReader(gone))
		if said, err := kind.CheckWhole(file); len(said) > 0 || !errors.Is(err, gone) {
			t.Errorf("%s: %v, %v", name, said, err)
		}
	}
}
