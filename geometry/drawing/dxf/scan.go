package dxf

import (
	"strconv"
	"strings"

	"stripwright/geometry/drawing/trace"
)

// group is one pair of a DXF file: a code that says what the value means.
type group struct {
	code  int
	value string
	line  int // line of the value; byte of it in a binary file
}

const cutCure = "the file was cut short: export or copy it again"

// scan splits a text DXF into groups, up to and with the end-of-file group.
// Comments (code 999) are dropped. It reports every line that is not a group
// code, and a file that stops early, and is not ok then.
func scan(data []byte, r *trace.Report) (groups []group, ok bool) {
	text := strings.TrimPrefix(string(data), "\ufeff")
	l := lines{rest: strings.TrimRight(text, "\x1a\x00"), end: "\n"}
	if !strings.Contains(text, "\n") {
		l.end = "\r"
	}
	for {
		word, more := l.next()
		if more && len(groups) == 0 && strings.TrimSpace(word) == "" {
			continue // blank lines before the first group
		}
		if !more {
			r.Problem("truncated", r.Line(max(l.number, 1)), cutCure, "the drawing ends without its EOF group")
			return groups, false
		}
		code, err := strconv.Atoi(strings.TrimSpace(word))
		if err != nil || code < -5 || code > 1071 {
			r.Problem("syntax", r.Line(l.number), "save the drawing as DXF again, unedited",
				"%q is not a group code", trace.Printable(word))
			return groups, false
		}
		value, more := l.next()
		if !more {
			r.Problem("truncated", r.Line(l.number), cutCure, "group code %d has no value: unexpected end", code)
			return groups, false
		}
		if code == 999 {
			continue
		}
		value = strings.TrimSpace(value)
		groups = append(groups, group{code, value, l.number})
		if code == 0 && value == "EOF" {
			return groups, true
		}
	}
}

// lines hands out one line of text after another.
type lines struct {
	rest, end string
	number    int // of the line handed out last
}

func (l *lines) next() (line string, ok bool) {
	if l.rest == "" {
		return "", false
	}
	line, l.rest, _ = strings.Cut(l.rest, l.end)
	l.number++
	return strings.TrimSuffix(line, "\r"), true
}
