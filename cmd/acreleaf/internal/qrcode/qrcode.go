// Package qrcode makes QR codes (ISO/IEC 18004). It knows neither paper nor screens.
package qrcode

import qr "github.com/piglig/go-qr"

// Of gives the code of a text, row by row; a module is true where it is dark. Its correction is the middle one of the
// first three, which reads from a creased card. The text is bytes whatever it is made of, so that the script of a page
// (theme/script/qr.ts), which has no other way to write one, gives the same code.
func Of(text string) ([][]bool, error) {
	bytes, err := qr.MakeBytes([]byte(text))
	if err != nil {
		return nil, err
	}
	made, err := qr.EncodeSegments([]*qr.QrSegment{bytes}, qr.Medium, qr.MinVersion, qr.MaxVersion, bestMask, false)
	if err != nil {
		return nil, err
	}
	rows := make([][]bool, made.Size())
	for y := range rows {
		rows[y] = make([]bool, made.Size())
		for x := range rows[y] {
			rows[y][x] = made.Module(x, y)
		}
	}
	return rows, nil
}

const bestMask = -1
