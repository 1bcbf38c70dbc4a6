// Package raster draws a simple drawing in SVG as a picture of dots, for those who take no SVG: the start screen of a
// phone, and a message that links to the site.
//
// It owns which part of SVG it draws: paths of lines and curves of the third degree, filled, or stroked along straight
// lines, in plain colours. Whatever else is in a drawing is an error, since it would be missing from the picture. The
// package must not know what a drawing is for.
package raster

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"strconv"

	"golang.org/x/image/vector"
)

// A drawing is what is read of an SVG.
type drawing struct {
	View  string `xml:"viewBox,attr"`
	Paths []path `xml:"path"`
	Other []struct {
		XMLName xml.Name
	} `xml:",any"`
}

type path struct {
	Data   string `xml:"d,attr"`
	Fill   string `xml:"fill,attr"`
	Stroke string `xml:"stroke,attr"`
	Other  []struct {
		XMLName xml.Name
	} `xml:",any"`
}

// PNG draws an SVG in the middle of a picture, as large as size says. Around it is the colour of its first path, which
// is its ground.
func PNG(svg []byte, width, height, size int) ([]byte, error) {
	var d drawing
	if err := xml.Unmarshal(svg, &d); err != nil {
		return nil, err
	}
	if len(d.Other) > 0 || len(d.Paths) == 0 {
		return nil, fmt.Errorf("a drawing is made of paths alone, and of one at least")
	}
	var side float64
	if _, err := fmt.Sscanf(d.View, "0 0 %g %g", &side, new(float64)); err != nil || side <= 0 {
		return nil, fmt.Errorf("the viewBox %q does not begin at 0 0", d.View)
	}
	to := image.NewRGBA(image.Rect(0, 0, width, height))
	c := canvas{to: to, scale: float64(size) / side, left: float64(width-size) / 2, top: float64(height-size) / 2}
	ground, err := colorOf(d.Paths[0].Fill)
	if err != nil {
		return nil, err
	}
	draw.Draw(to, to.Bounds(), image.NewUniform(ground), image.Point{}, draw.Src)
	for _, p := range d.Paths {
		if err := c.draw(p); err != nil {
			return nil, err
		}
	}
	var out bytes.Buffer
	err = png.Encode(&out, to) // the best compression would save an eighth of it, and take four times as long
	return out.Bytes(), err
}

// A canvas is a picture with the place of the drawing in it.
type canvas struct {
	to               *image.RGBA
	scale, left, top float64
}

// at is a point of the drawing in the picture.
func (c *canvas) at(p point) (x, y float32) {
	return float32(c.left + p.x*c.scale), float32(c.top + p.y*c.scale)
}

func (c *canvas) draw(p path) error {
	lines, err := read(p.Data)
	if err != nil {
		return err
	}
	if p.Fill != "none" {
		if err := c.paint(p.Fill, func(v *vector.Rasterizer) { c.fill(v, lines) }); err != nil {
			return err
		}
	}
	if p.Stroke != "" {
		return c.paint(p.Stroke, func(v *vector.Rasterizer) { c.stroke(v, lines) })
	}
	return nil
}

func (c *canvas) paint(with string, shape func(v *vector.Rasterizer)) error {
	ink, err := colorOf(with)
	if err != nil {
		return err
	}
	size := c.to.Bounds().Size()
	v := vector.NewRasterizer(size.X, size.Y)
	shape(v)
	v.Draw(c.to, c.to.Bounds(), image.NewUniform(ink), image.Point{})
	return nil
}

func (c *canvas) fill(v *vector.Rasterizer, lines []line) {
	for _, l := range lines {
		v.MoveTo(c.at(l[0].to))
		for _, s := range l[1:] {
			if !s.curved {
				v.LineTo(c.at(s.to))
				continue
			}
			ax, ay := c.at(s.first)
			bx, by := c.at(s.second)
			x, y := c.at(s.to)
			v.CubeTo(ax, ay, bx, by, x, y)
		}
		v.ClosePath()
	}
}

// stroke draws lines that are 1 wide, as SVG has it without a width, and end where they are told to.
func (c *canvas) stroke(v *vector.Rasterizer, lines []line) {
	for _, l := range lines {
		for i, s := range l[1:] {
			from, to := l[i].to, s.to
			long := math.Hypot(to.x-from.x, to.y-from.y)
			if long == 0 {
				continue
			}
			side := point{-(to.y - from.y) / long / 2, (to.x - from.x) / long / 2}
			v.MoveTo(c.at(from.plus(side)))
			v.LineTo(c.at(to.plus(side)))
			v.LineTo(c.at(to.minus(side)))
			v.LineTo(c.at(from.minus(side)))
			v.ClosePath()
		}
	}
}

// colorOf reads "#97290f" or "#fff".
func colorOf(text string) (color.RGBA, error) {
	digits := text
	if len(text) == 4 {
		digits = "#" + text[1:2] + text[1:2] + text[2:3] + text[2:3] + text[3:4] + text[3:4]
	}
	n, err := strconv.ParseUint(digits[min(1, len(digits)):], 16, 32)
	if err != nil || len(digits) != 7 || digits[0] != '#' {
		return color.RGBA{}, fmt.Errorf("%q is not a colour such as #97290f", text)
	}
	return color.RGBA{uint8(n >> 16), uint8(n >> 8), uint8(n), 0xff}, nil
}
