package raster_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/raster"
)

const square = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"><path fill="#102030" d="M0 0h16v16H0z"/>`

func picture(t *testing.T, svg string, width, height, size int) image.Image {
	t.Helper()
	drawn, err := raster.PNG([]byte(svg), width, height, size)
	if err != nil {
		t.Fatal(err)
	}
	decoded, err := png.Decode(bytes.NewReader(drawn))
	if err != nil {
		t.Fatal(err)
	}
	if size := decoded.Bounds().Size(); size != (image.Point{width, height}) {
		t.Fatalf("the picture is %v", size)
	}
	return decoded
}

// What is where is worked by hand from the numbers of the paths.
func TestPNG(t *testing.T) {
	ground, white := color.RGBA{0x10, 0x20, 0x30, 255}, color.RGBA{255, 255, 255, 255}
	for _, c := range []struct {
		name, path string
		is, is2    image.Point // a dot of the path, and one beside it, in a picture of 160
	}{
		{"a square", `<path fill="#fff" d="M4 4H8V8H4z"/>`, image.Point{60, 60}, image.Point{90, 60}},
		{"the same from where it is", `<path fill="#fff" d="m4 4h4v4h-4z"/>`, image.Point{60, 60}, image.Point{60, 90}},
		{"numbers without spaces", `<path fill="#ffffff" d="M4.5.5l2 0 0 2-2 0z"/>`, image.Point{55, 15},
			image.Point{55, 35}},
		{"lines after a move", `<path fill="#fff" d="M4 4 8 4 8 8 4 8"/>`, image.Point{60, 60}, image.Point{30, 60}},
		// A quarter of a circle about 4 4, with the usual 0.5523 of its radius 8: 5.6 from there is inside, and 9 is not.
		{"a curve", `<path fill="#fff" d="M4 12C8.418 12 12 8.418 12 4L4 4z"/>`, image.Point{79, 79}, image.Point{105, 105}},
		{"a stroke", `<path stroke="#fff" fill="none" d="M2 8H14"/>`, image.Point{80, 83}, image.Point{80, 87}},
		{"a stroke ends where it is told to", `<path stroke="#fff" fill="none" d="M2 8H14"/>`, image.Point{22, 80},
			image.Point{17, 80}},
	} {
		drawn := picture(t, square+c.path+"</svg>", 160, 160, 160)
		if got := drawn.At(c.is.X, c.is.Y); got != white {
			t.Errorf("%s: %v in it is %v", c.name, c.is, got)
		}
		if got := drawn.At(c.is2.X, c.is2.Y); got != ground {
			t.Errorf("%s: %v beside it is %v", c.name, c.is2, got)
		}
	}
}

// A drawing in the middle has its ground around it.
func TestAround(t *testing.T) {
	drawn := picture(t, square+`<path fill="#fff" d="M0 0h8v16H0z"/></svg>`, 300, 200, 100)
	for at, want := range map[image.Point]uint32{{5, 5}: 0x10, {99, 100}: 0x10, {101, 100}: 0xff, {149, 51}: 0xff,
		{151, 100}: 0x10, {140, 48}: 0x10} {
		if red, _, _, _ := drawn.At(at.X, at.Y).RGBA(); red>>8 != want {
			t.Errorf("the dot at %v has red %x, not %x", at, red>>8, want)
		}
	}
}

func TestRefused(t *testing.T) {
	for _, c := range []struct{ svg, why string }{
		{`<svg viewBox="0 0 16 16"><path fill="#fff" d="M0 0q1 1 2 2"/></svg>`, "go on with 'q'"},
		{`<svg viewBox="0 0 16 16"><path fill="#fff" d="h1"/></svg>`, "begins with M or m"},
		{`<svg viewBox="0 0 16 16"><path fill="#fff" d="z"/></svg>`, "begins with M or m"},
		{`<svg viewBox="0 0 16 16"><path fill="#fff" d="M0 0 1"/></svg>`, "of no command"},
		{`<svg viewBox="0 0 16 16"><path fill="#fff" d="M0 0z1"/></svg>`, "nothing follows z"},
		{`<svg viewBox="0 0 16 16"><path fill="#fff" d="M0 0 1 h2"/></svg>`, "go on with 'h'"},
		{`<svg viewBox="0 0 16 16"><path fill="#fff" d="M0 0 % 2"/></svg>`, "neither a command nor a number"},
		{`<svg viewBox="0 0 16 16"><path fill="red" d="M0 0h1"/></svg>`, "not a colour"},
		{`<svg viewBox="0 0 16 16"><path d="M0 0h1"/></svg>`, "not a colour"},
		{`<svg viewBox="0 0 16 16"><path fill="#fff" d="M0 0h1"/><circle r="1"/></svg>`, "paths alone"},
		{`<svg viewBox="0 0 16 16"></svg>`, "one at least"},
		{`<svg viewBox="1 0 16 16"><path fill="#fff" d="M0 0h1"/></svg>`, "viewBox"},
		{`<svg`, "EOF"},
	} {
		if _, err := raster.PNG([]byte(c.svg), 16, 16, 16); err == nil || !strings.Contains(err.Error(), c.why) {
			t.Errorf("%s: %v, and it should say %q", c.svg, err, c.why)
		}
	}
}

// The icon of the theme is drawn: white leaf on its ground, with the ground in the corners.
func TestIcon(t *testing.T) {
	icon, err := os.ReadFile(filepath.Join("..", "..", "..", "..", "theme", "style", "icon.svg"))
	if err != nil {
		t.Fatal(err)
	}
	drawn := picture(t, string(icon), 160, 160, 160)
	for at, want := range map[image.Point]color.RGBA{{2, 2}: {0x97, 0x29, 0x0f, 255}, {110, 60}: {255, 255, 255, 255}} {
		if got := drawn.At(at.X, at.Y); got != want {
			t.Errorf("the dot at %v is %v", at, got)
		}
	}
}
