// Package readback reads a PDF of package pdf back for tests: its streams
// unpacked, and the words of each page as the file's own tables give them. It
// reads what that package writes and little else.
package readback

import (
	"bytes"
	"compress/zlib"
	"encoding/hex"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"
)

var stream = regexp.MustCompile(`(?s)<<([^\n]*)/Filter/FlateDecode/Length (\d+)>>\nstream\n`)

// Plain gives the file with every stream unpacked; embedded fonts are left out.
func Plain(t testing.TB, data []byte) []byte {
	t.Helper()
	var out bytes.Buffer
	for {
		at := stream.FindSubmatchIndex(data)
		if at == nil {
			out.Write(data)
			return out.Bytes()
		}
		long, err := strconv.Atoi(string(data[at[4]:at[5]]))
		if err != nil {
			t.Fatal(err)
		}
		out.Write(data[:at[0]])
		fmt.Fprintf(&out, "<<%s>>\nstream\n", data[at[2]:at[3]])
		if !bytes.Contains(data[at[2]:at[3]], []byte("/Length1")) {
			out.Write(Unpacked(t, data[at[1]:at[1]+long]))
		}
		data = data[at[1]+long:]
	}
}

// Unpacked gives the bytes of one stream.
func Unpacked(t testing.TB, packed []byte) []byte {
	t.Helper()
	r, err := zlib.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	plain, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return plain
}

var (
	object   = regexp.MustCompile(`(?s)\n(\d+) 0 obj\n(.*?)\nendobj`)
	fontName = regexp.MustCompile(`/(F\d) (\d+) 0 R`)
	unicode  = regexp.MustCompile(`/ToUnicode (\d+) 0 R`)
	mapping  = regexp.MustCompile(`<([0-9A-F]{4})> <([0-9A-F]+)>`)
	kids     = regexp.MustCompile(`/Kids\[([^\]]*)\]`)
	content  = regexp.MustCompile(`/Contents (\d+) 0 R`)
	shown    = regexp.MustCompile(`BT /(F\d) [^<]*<([0-9A-F]*)> Tj ET`)
)

// Words gives the runs of lettering of each page, in the order in which they
// stand in it.
func Words(t testing.TB, data []byte) [][]string {
	t.Helper()
	objects := map[string]string{}
	for _, m := range object.FindAllSubmatch(Plain(t, data), -1) {
		objects[string(m[1])] = string(m[2])
	}
	letters := map[string]map[string]string{}
	for _, body := range objects {
		if !strings.HasPrefix(body, "<</Font<<") {
			continue
		}
		for _, f := range fontName.FindAllStringSubmatch(body, -1) {
			letters[f[1]] = map[string]string{}
			back := unicode.FindStringSubmatch(objects[f[2]])
			for _, m := range mapping.FindAllStringSubmatch(objects[back[1]], -1) {
				letters[f[1]][m[1]] = fromUTF16(t, m[2])
			}
		}
	}
	var pages [][]string
	for _, body := range objects {
		list := kids.FindStringSubmatch(body)
		if list == nil || !strings.Contains(body, "/Type/Pages") {
			continue
		}
		for _, kid := range strings.Fields(strings.ReplaceAll(list[1], " 0 R", "")) {
			var runs []string
			for _, run := range shown.FindAllStringSubmatch(objects[content.FindStringSubmatch(objects[kid])[1]], -1) {
				var b strings.Builder
				for i := 0; i+4 <= len(run[2]); i += 4 {
					b.WriteString(letters[run[1]][run[2][i:i+4]])
				}
				runs = append(runs, b.String())
			}
			pages = append(pages, runs)
		}
	}
	return pages
}

func fromUTF16(t testing.TB, figures string) string {
	t.Helper()
	b, err := hex.DecodeString(figures)
	if err != nil {
		t.Fatal(err)
	}
	var units []uint16
	for i := 0; i+1 < len(b); i += 2 {
		units = append(units, uint16(b[i])<<8|uint16(b[i+1]))
	}
	return string(utf16.Decode(units))
}
