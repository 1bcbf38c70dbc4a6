// Package qrcode makes QR codes (ISO/IEC 18004). It knows neither paper nor screens.
package qrcode

import qr "github.com/piglig/go-qr"

// Of gives the code of a text, row by row; a module is true where it is dark. Its correction is the middle one of four,
// which reads from a creased card.
func Of(text string) ([][]bool, error) {
	made, err := qr.EncodeText(text, qr.Medium)
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
