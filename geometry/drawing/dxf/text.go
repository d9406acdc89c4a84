package dxf

import (
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/japanese"
	"golang.org/x/text/encoding/korean"
	"golang.org/x/text/encoding/simplifiedchinese"
	"golang.org/x/text/encoding/traditionalchinese"
)

// codePages names the code pages of $DWGCODEPAGE, in lower case.
var codePages = map[string]encoding.Encoding{
	"ansi_874": charmap.Windows874, "ansi_1250": charmap.Windows1250, "ansi_1251": charmap.Windows1251,
	"ansi_1252": charmap.Windows1252, "ansi_1253": charmap.Windows1253, "ansi_1254": charmap.Windows1254,
	"ansi_1255": charmap.Windows1255, "ansi_1256": charmap.Windows1256, "ansi_1257": charmap.Windows1257,
	"ansi_1258": charmap.Windows1258, "ansi_932": japanese.ShiftJIS, "ansi_949": korean.EUCKR,
	"ansi_936": simplifiedchinese.GBK, "ansi_950": traditionalchinese.Big5,
	"dos437": charmap.CodePage437, "dos850": charmap.CodePage850, "dos852": charmap.CodePage852,
	"dos855": charmap.CodePage855, "dos860": charmap.CodePage860, "dos863": charmap.CodePage863,
	"dos865": charmap.CodePage865, "dos866": charmap.CodePage866,
}

// decoder gives the function that turns a name of the file into text: UTF-8
// from version AC1021 (2007) on, the stated code page before, Windows-1252 when
// none is stated and the bytes are no UTF-8.
func decoder(version, page string) func(string) string {
	enc, stated := codePages[strings.ToLower(strings.TrimSpace(page))]
	if !stated {
		enc = charmap.Windows1252
	}
	utf := version >= "AC1021" || !stated
	return func(s string) string {
		if !ascii(s) && !(utf && utf8.ValidString(s)) {
			if t, err := enc.NewDecoder().String(s); err == nil {
				s = t
			}
		}
		return escaped.ReplaceAllStringFunc(s, unescape)
	}
}

// escaped is a character written by its number: \U+00DF, or \M+1 and two bytes
// of a code page.
var escaped = regexp.MustCompile(`\\U\+[0-9A-Fa-f]{4}|\\M\+[1-5][0-9A-Fa-f]{4}`)

// wide are the code pages of \M+1 to \M+5, from the published DXF reference.
var wide = map[byte]encoding.Encoding{
	'1': japanese.ShiftJIS, '2': traditionalchinese.Big5, '3': korean.EUCKR, '5': simplifiedchinese.GBK,
}

func unescape(s string) string {
	n, err := strconv.ParseUint(s[len(s)-4:], 16, 16)
	if err != nil {
		return s
	}
	if s[1] == 'U' {
		return string(rune(n))
	}
	enc, known := wide[s[3]]
	if !known {
		return s
	}
	code := []byte{byte(n >> 8), byte(n)}
	if code[0] == 0 {
		code = code[1:]
	}
	t, err := enc.NewDecoder().Bytes(code)
	if err != nil {
		return s
	}
	return string(t)
}

func ascii(s string) bool {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}
