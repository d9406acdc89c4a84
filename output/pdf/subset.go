package pdf

import (
	"encoding/binary"
	"sort"
)

// A TrueType font is a directory of tables; outlines lie in "glyf", found by
// "loca", widths in "hmtx" (Apple TrueType Reference Manual; ISO/IEC 14496-22).

// tables reads the directory of a font.
func tables(data []byte) map[string][]byte {
	out := map[string][]byte{}
	for i := range int(binary.BigEndian.Uint16(data[4:])) {
		entry := data[12+16*i:]
		at, long := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
		out[string(entry[:4])] = data[at : at+long]
	}
	return out
}

// outlines looks glyphs up in a font.
type outlines struct {
	glyf, loca []byte
	long       bool // loca holds 32 bits
}

func (o outlines) of(glyph int) []byte {
	if o.long {
		return o.glyf[binary.BigEndian.Uint32(o.loca[4*glyph:]):binary.BigEndian.Uint32(o.loca[4*glyph+4:])]
	}
	return o.glyf[2*int(binary.BigEndian.Uint16(o.loca[2*glyph:])) : 2*int(binary.BigEndian.Uint16(o.loca[2*glyph+2:]))]
}

// subset gives a font that holds the glyphs listed, in that order; the first is
// the one for missing letters. Outlines are taken as they are: both faces have
// none that is composed of others (a test holds it).
func subset(data []byte, glyphs []int) []byte {
	t := tables(data)
	o := outlines{t["glyf"], t["loca"], binary.BigEndian.Uint16(t["head"][50:]) != 0}
	var glyf, loca []byte
	for _, g := range glyphs {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		glyf = append(glyf, o.of(g)...)
		for len(glyf)%4 != 0 {
			glyf = append(glyf, 0)
		}
	}
	loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
	n := []byte{byte(len(glyphs) >> 8), byte(len(glyphs))}
	return assembled(map[string][]byte{
		"glyf": glyf, "loca": loca, "hmtx": widths(t, glyphs),
		"head": patched(patched(t["head"], 8, 0, 0, 0, 0), 50, 0, 1), // no checksum yet, long loca
		"hhea": patched(t["hhea"], 34, n...), "maxp": patched(t["maxp"], 4, n...),
		"cvt ": t["cvt "], "fpgm": t["fpgm"], "prep": t["prep"],
	})
}

func patched(table []byte, at int, bytes ...byte) []byte {
	out := append([]byte{}, table...)
	copy(out[at:], bytes)
	return out
}

// widths gives the table of widths for glyphs; past the last full entry of the
// font all are as wide as that.
func widths(t map[string][]byte, glyphs []int) []byte {
	full := int(binary.BigEndian.Uint16(t["hhea"][34:]))
	var out []byte
	for _, g := range glyphs {
		if g < full {
			out = append(out, t["hmtx"][4*g:4*g+4]...)
			continue
		}
		out = append(out, t["hmtx"][4*full-4:4*full-2]...)
		out = append(out, t["hmtx"][4*full+2*(g-full):4*full+2*(g-full)+2]...)
	}
	return out
}

// assembled writes tables behind their directory, with the checksums.
func assembled(t map[string][]byte) []byte {
	var names []string
	for name := range t {
		names = append(names, name)
	}
	sort.Strings(names)
	n := len(names)
	power := 1
	for 2*power <= n {
		power *= 2
	}
	log := 0
	for 1<<log < power {
		log++
	}
	out := []byte{0, 1, 0, 0}
	for _, v := range []int{n, 16 * power, log, 16*n - 16*power} {
		out = binary.BigEndian.AppendUint16(out, uint16(v))
	}
	var body []byte
	head := 0
	for _, name := range names {
		at := 12 + 16*n + len(body)
		if name == "head" {
			head = at
		}
		table := append([]byte{}, t[name]...)
		long := len(table)
		for len(table)%4 != 0 {
			table = append(table, 0)
		}
		out = append(out, name...)
		for _, v := range []uint32{sum(table), uint32(at), uint32(long)} {
			out = binary.BigEndian.AppendUint32(out, v)
		}
		body = append(body, table...)
	}
	out = append(out, body...)
	binary.BigEndian.PutUint32(out[head+8:], 0xB1B0AFBA-sum(out))
	return out
}

func sum(data []byte) uint32 {
	var s uint32
	for i := 0; i+3 < len(data); i += 4 {
		s += binary.BigEndian.Uint32(data[i:])
	}
	return s
}
