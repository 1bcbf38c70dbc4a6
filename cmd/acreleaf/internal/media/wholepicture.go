package media

import (
	"hash/crc32"
	"io"
)

// wholePNG follows the chunks of a PNG (ISO/IEC 15948): each has its length before it and its checksum behind it.
func wholePNG(w *walk) error {
	if err := w.skip(8); err != nil { // CheckHead has compared it
		return err
	}
	drawn := false
	for first := true; ; first = false {
		head, err := w.take(8)
		if err != nil {
			return err
		}
		length, name := int64(big.Uint32(head)), string(head[4:])
		if first && (name != "IHDR" || length != 13) {
			return changed
		}
		sum := crc32.NewIEEE()
		_, _ = sum.Write(head[4:]) // a sum takes all
		if _, err := io.CopyN(sum, w.r, length); err != nil {
			return err
		}
		if own, err := w.take(4); err != nil {
			return err
		} else if big.Uint32(own) != sum.Sum32() {
			return changed
		}
		drawn = drawn || name == "IDAT" && length > 0
		if name == "IEND" {
			return needs(drawn, noPicture)
		}
	}
}

func needs(there bool, or damage) error {
	if there {
		return nil
	}
	return or
}

// Markers of a JPEG (ITU-T T.81, table B.1).
const (
	jpegEnd  = 0xd9
	jpegScan = 0xda
)

// wholeJPEG follows the segments of a JPEG to the mark of its end. What a camera puts behind that is no part of it.
func wholeJPEG(w *walk) error {
	if err := w.skip(2); err != nil {
		return err
	}
	framed, scanned := false, false
	for {
		marker, err := w.marker()
		switch {
		case err != nil:
			return err
		case marker == jpegEnd:
			return needs(framed && scanned, noPicture)
		case marker == 0x01 || marker >= 0xd0 && marker <= 0xd8: // without a length
			continue
		}
		length, err := w.take(2)
		if err != nil {
			return err
		}
		if err := w.skip(int64(big.Uint16(length)) - 2); err != nil {
			return err
		}
		isFrame := marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc
		framed, scanned = framed || isFrame, scanned || marker == jpegScan
	}
}

// marker goes on to the next marker, and gives its second byte. The bytes of a scan have none but those of a restart.
func (w *walk) marker() (byte, error) {
	before := byte(0)
	for {
		b, err := w.r.ReadByte()
		if err != nil {
			return 0, err
		}
		if before == 0xff && b != 0 && b != 0xff {
			return b, nil
		}
		before = b
	}
}

// wholeGIF follows the blocks of a GIF (version 89a) to its trailer.
func wholeGIF(w *walk) error {
	head, err := w.take(6 + 7)
	if err != nil {
		return err
	}
	if err := w.colors(head[10]); err != nil {
		return err
	}
	drawn := false
	for {
		kind, err := w.r.ReadByte()
		switch {
		case err != nil:
			return err
		case kind == ';':
			return needs(drawn, noPicture)
		case kind == '!':
			err = w.skip(1)
		case kind == ',':
			drawn = true
			var of []byte
			if of, err = w.take(9); err == nil {
				err = w.colors(of[8])
			}
			if err == nil {
				err = w.skip(1)
			}
		default:
			err = changed
		}
		if err == nil {
			err = w.blocks()
		}
		if err != nil {
			return err
		}
	}
}

// colors leaves out the table of colors that flags tell of.
func (w *walk) colors(flags byte) error {
	if flags&0x80 == 0 {
		return nil
	}
	return w.skip(3 << (flags&7 + 1))
}

// blocks leaves out blocks with a byte of their length, to the empty one.
func (w *walk) blocks() error {
	for {
		n, err := w.r.ReadByte()
		if err != nil || n == 0 {
			return err
		}
		if err := w.skip(int64(n)); err != nil {
			return err
		}
	}
}

// wholeWebP follows the chunks of a WebP (RFC 9649), as far as its first ones say that it goes.
func wholeWebP(w *walk) error {
	head, err := w.take(12)
	if err != nil {
		return err
	}
	drawn := false
	for left := int64(little.Uint32(head[4:])) - 4; left >= 8; {
		chunk, err := w.take(8)
		if err != nil {
			return err
		}
		length := int64(little.Uint32(chunk[4:]))
		length += length & 1
		if left -= 8 + length; left < -1 { // some leave out the last odd byte
			return changed
		}
		if err := w.skip(length + min(0, left)); err != nil {
			return err
		}
		switch string(chunk[:4]) {
		case "VP8 ", "VP8L", "ANMF":
			drawn = true
		}
	}
	return needs(drawn, noPicture)
}
