package media

import (
	"bytes"
	"math/bits"
)

var wholeAVIF, wholeMP4 = wholeBoxes("meta", noPicture), wholeBoxes("moov", noFilm)

// mostMeta is how much of a box about what is in a file is looked through. A small picture may be in there (idat).
const mostMeta = 1 << 20

// wholeBoxes follows the boxes of a file (ISO/IEC 14496-12). One of them says what is in it, and another has it.
func wholeBoxes(name string, or damage) func(w *walk) error {
	return func(w *walk) error {
		said, there := false, false
		whole := func() error { return needs(said && there, or) }
		for !w.ended() {
			head, err := w.take(8)
			if err != nil {
				return err
			}
			said, there = said || string(head[4:]) == name, there || string(head[4:]) == "mdat"
			length, own := int64(big.Uint32(head)), int64(8)
			switch length {
			case 0: // to the end
				return whole()
			case 1:
				long, err := w.take(8)
				if err != nil {
					return err
				}
				length, own = int64(big.Uint64(long)), 16
			}
			left := length - own
			if string(head[4:]) == "meta" && left >= 0 {
				part, err := w.take(int(min(left, mostMeta)))
				if err != nil {
					return err
				}
				there, left = there || bytes.Contains(part, []byte("idat")), left-int64(len(part))
			}
			if err := w.skip(left); err != nil {
				return err
			}
		}
		return whole()
	}
}

// mostTail is how much of the end of a file is looked through: a ZIP may have a comment of 65,535 bytes there.
const mostTail = 22 + 1<<16 - 1

// wholePDF looks for the mark of the end (ISO 32000). Something may be behind it.
func wholePDF(w *walk) error {
	last, _, err := w.tail(mostTail)
	if err != nil {
		return err
	}
	return needs(bytes.Contains(last, []byte("%%EOF")), cutOff)
}

// wholeZIP looks for the list of what is in an archive, which is at its end (APPNOTE 4.3.16).
func wholeZIP(w *walk) error {
	last, size, err := w.tail(mostTail)
	if err != nil {
		return err
	}
	at := bytes.LastIndex(last, []byte("PK\x05\x06"))
	if at < 0 || len(last)-at < 22 {
		return cutOff
	}
	const elsewhere = 1<<32 - 1 // of more than 4 GB
	length, from := int64(little.Uint32(last[at+12:])), int64(little.Uint32(last[at+16:]))
	before := size - int64(len(last)-at)
	if length != elsewhere && from != elsewhere && from+length > before {
		return cutOff
	}
	return nil
}

// wholeWebM looks for the segment behind the head of a WebM (RFC 8794), and for all of it.
func wholeWebM(w *walk) error {
	if err := w.skip(4); err != nil {
		return err
	}
	length, _, err := w.length()
	if err != nil {
		return err
	}
	if err := w.skip(length); err != nil {
		return err
	}
	name, err := w.take(4)
	if err != nil {
		return err
	}
	if string(name) != "\x18\x53\x80\x67" {
		return changed
	}
	length, known, err := w.length()
	if err != nil {
		return err
	}
	if !known {
		length = 1
	}
	return w.skip(length)
}

// length reads a length whose first byte says how many it has. One that is all ones is not known.
func (w *walk) length() (n int64, known bool, err error) {
	first, err := w.r.ReadByte()
	if err != nil {
		return 0, false, err
	}
	more := bits.LeadingZeros8(first)
	if more > 7 {
		return 0, false, changed
	}
	rest, err := w.take(more)
	if err != nil {
		return 0, false, err
	}
	n = int64(first) & (1<<(7-more) - 1)
	for _, b := range rest {
		n = n<<8 | int64(b)
	}
	return n, n != 1<<(7*(more+1))-1, nil
}

// wholeMP3 leaves out the notes before a sound, and looks for a frame of it. A sound that is cut off plays to there.
func wholeMP3(w *walk) error {
	head, err := w.r.Peek(10)
	if err == nil && string(head[:3]) == "ID3" {
		n := int64(0)
		for _, b := range head[6:] {
			n = n<<7 | int64(b&0x7f)
		}
		err = w.skip(10 + n)
	}
	for before := byte(0); err == nil; {
		var b byte
		if b, err = w.r.ReadByte(); isFrame([]byte{before, b}) && err == nil {
			return nil
		}
		before = b
	}
	return err
}
