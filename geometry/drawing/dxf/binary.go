package dxf

import (
	"bytes"
	"encoding/binary"
	"math"
	"strconv"
	"strings"

	"stripwright/geometry/drawing/trace"
)

// sentinel is how a binary DXF begins, after seven letters.
var sentinel = []byte(" Binary DXF\r\n\x1a\x00")

// IsBinary says whether the data is a binary DXF.
func IsBinary(data []byte) bool {
	return len(data) > 22 && bytes.Equal(data[7:22], sentinel)
}

// scanBinary splits a binary DXF into groups. Numbers become text again, so
// that everything after it is the same for both kinds.
func scanBinary(data []byte, r *trace.Report) (groups []group, ok bool) {
	b := binaryReader{data: data, at: 22}
	// The first group is 0, or a comment (999, written 255 and two bytes).
	b.short = len(data) > 24 && (data[22] == 255 || (data[22] == 0 && data[23] != 0))
	for {
		start := b.at
		code := b.code()
		at := b.at
		value := b.value(code)
		if b.cut {
			r.Problem("truncated", r.Line(start), cutCure, "the drawing ends without its EOF group")
			return groups, false
		}
		if code < -5 || code > 1071 {
			r.Problem("syntax", r.Line(start), "save the drawing as text DXF", "%d is not a group code", code)
			return groups, false
		}
		if code != 999 {
			groups = append(groups, group{code, value, at})
		}
		if code == 0 && value == "EOF" {
			return groups, true
		}
	}
}

type binaryReader struct {
	data  []byte
	at    int
	short bool // one-byte group codes, as before 1994
	cut   bool // the data ended too early
}

func (b *binaryReader) take(n int) []byte {
	if b.at+n > len(b.data) {
		b.cut = true
		return make([]byte, n)
	}
	b.at += n
	return b.data[b.at-n : b.at]
}

func (b *binaryReader) code() int {
	if b.short {
		if c := b.take(1)[0]; c != 255 {
			return int(c)
		}
	}
	return int(int16(binary.LittleEndian.Uint16(b.take(2))))
}

// value reads a value whose kind follows from the group code.
func (b *binaryReader) value(code int) string {
	in := func(from, to int) bool { return code >= from && code <= to }
	switch {
	case in(10, 59), in(110, 149), in(210, 239), in(460, 469), in(1010, 1059):
		v := math.Float64frombits(binary.LittleEndian.Uint64(b.take(8)))
		return strconv.FormatFloat(v, 'g', -1, 64)
	case in(60, 79), in(170, 179), in(270, 289), in(370, 389), in(400, 409), in(1060, 1070):
		return strconv.Itoa(int(int16(binary.LittleEndian.Uint16(b.take(2)))))
	case in(90, 99), in(420, 429), in(440, 459), code == 1071:
		return strconv.Itoa(int(int32(binary.LittleEndian.Uint32(b.take(4)))))
	case in(160, 169):
		return strconv.FormatInt(int64(binary.LittleEndian.Uint64(b.take(8))), 10)
	case in(290, 299):
		return strconv.Itoa(int(b.take(1)[0]))
	case in(310, 319), code == 1004:
		b.take(int(b.take(1)[0]))
		return ""
	}
	return b.text()
}

func (b *binaryReader) text() string {
	n := bytes.IndexByte(b.data[min(b.at, len(b.data)):], 0)
	if n < 0 {
		b.cut = true
		return ""
	}
	s := string(b.data[b.at : b.at+n])
	b.at += n + 1
	return strings.TrimSpace(s)
}
