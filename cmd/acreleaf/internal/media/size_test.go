package media

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"
)

func TestSizeOf(t *testing.T) {
	picture := image.NewPaletted(image.Rect(0, 0, 30, 20), color.Palette{color.Black, color.White})
	encoded := func(encode func(w *bytes.Buffer) error) string {
		var w bytes.Buffer
		if err := encode(&w); err != nil {
			t.Fatal(err)
		}
		return w.String()
	}
	photo := encoded(func(w *bytes.Buffer) error { return jpeg.Encode(w, picture, nil) })
	// The orientation 6 in Exif of both orders of bytes, as a camera that was held upright writes it.
	turned := func(order binary.AppendByteOrder, mark string) string {
		exif := order.AppendUint32(order.AppendUint16([]byte(mark), 42), 8)
		for _, v := range []uint16{1, 0x0112, 3} {
			exif = order.AppendUint16(exif, v)
		}
		exif = order.AppendUint16(order.AppendUint16(order.AppendUint32(exif, 1), 6), 0)
		part := "Exif\x00\x00" + string(exif)
		return "\xff\xd8\xff\xe1" + string(binary.BigEndian.AppendUint16(nil, uint16(len(part)+2))) + part + photo[2:]
	}
	for name, c := range map[string]struct {
		text string
		want Size
	}{
		"a.png":  {encoded(func(w *bytes.Buffer) error { return png.Encode(w, picture) }), Size{30, 20}},
		"a.gif":  {encoded(func(w *bytes.Buffer) error { return gif.Encode(w, picture, nil) }), Size{30, 20}},
		"a.jpg":  {photo, Size{30, 20}},
		"b.jpg":  {turned(binary.BigEndian, "MM"), Size{20, 30}},
		"c.jpeg": {turned(binary.LittleEndian, "II"), Size{20, 30}},
		"a.svg":  {`<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 640 480"/>`, Size{640, 480}},
		"b.svg":  {`<svg width="12.6px" height="9" viewBox="0 0 640 480"/>`, Size{13, 9}},
		"f.svg":  {`<svg viewBox="0 0 1 1"/>`, Size{640, 640}},
		"g.svg":  {`<svg viewBox="-1,-1,.5,0.25"/>`, Size{640, 320}},
		"h.svg":  {`<svg viewBox="0 0 100 400" width="100%"/>`, Size{160, 640}},
		"i.svg":  {`<svg viewBox="0 0 0 5"/>`, Size{}},
		"j.svg":  {`<svg viewBox="0 0 NaN 5"/>`, Size{}},
		"k.svg":  {`<svg viewBox="0 0 1280 960"/>`, Size{640, 480}},
		"c.svg":  {`<svg width="100%" height="50%"/>`, Size{}},
		"d.svg":  {`<svg viewBox="0 0 1e9 5"/>`, Size{}},
		// Bytes by RFC 9649: the canvas, less one, in 24 bits each; and in 14 bits each.
		"a.webp": {"RIFF\x16\x00\x00\x00WEBPVP8X\x0a\x00\x00\x00\x00\x00\x00\x00\x1d\x00\x00\x13\x00\x00", Size{30, 20}},
		"b.webp": {"RIFF\x16\x00\x00\x00WEBPVP8L\x0a\x00\x00\x00\x2f\x1d\xc0\x04\x00" + strings.Repeat("\x00", 5),
			Size{30, 20}},
		"c.webp": {"RIFF\x16\x00\x00\x00WEBPVP8 \x0a\x00\x00\x00\x00\x00\x00\x9d\x01\x2a\x1e\x00\x14\x00", Size{30, 20}},
		"a.avif": {"ispe\x00\x00\x00\x00\x00\x00\x00\x08\x00\x00\x00\x06" +
			"ispe\x00\x00\x00\x00\x00\x00\x00\x1e\x00\x00\x00\x14", Size{30, 20}},
		"d.webp": {"RIFF", Size{}}, "d.png": {"\x89PNG", Size{}}, "e.svg": {"<svg", Size{}}, "b.avif": {"ispe\x00", Size{}},
		"d.jpg": {"\xff\xd8Exif\x00\x00II", Size{}},
	} {
		kind, _ := Of(name)
		if got := kind.SizeOf(strings.NewReader(c.text)); got != c.want {
			t.Errorf("%s has %v, want %v", name, got, c.want)
		}
	}
}
