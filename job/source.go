package job

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// tree turns the text of a job file into a YAML tree, or refuses it and gives
// nil.
func (r *reading) tree(data []byte) *yaml.Node {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if !r.readable(data) {
		return nil
	}
	before := len(r.problems)
	r.tabs(data)
	tabbed := len(r.problems) > before
	decoder := yaml.NewDecoder(bytes.NewReader(data))
	var root, second yaml.Node
	switch err := decoder.Decode(&root); {
	case errors.Is(err, io.EOF):
		r.refuse(nil, ruleText, "write a job, or begin with the starter that init writes", "the file is empty")
		return nil
	case err != nil:
		if !tabbed {
			r.syntax(data, err)
		}
		return nil
	}
	if err := decoder.Decode(&second); err == nil {
		r.refuse(&second, ruleSecond, "keep one job in a file and take the --- out", "a second document begins here; it would be left unread")
	} else if !errors.Is(err, io.EOF) {
		r.syntax(data, err)
	}
	if tabbed || len(root.Content) == 0 {
		return nil
	}
	return root.Content[0]
}

// readable refuses what is not a text in UTF-8, and a drawing in place of a
// job.
func (r *reading) readable(data []byte) bool {
	start := string(data[:min(len(data), 512)])
	trimmed := strings.TrimSpace(start)
	switch {
	case len(data) > mostFile:
		r.refuse(nil, ruleText, "give the job file; a drawing is named in it", "%s", errLarge)
	case strings.HasPrefix(start, "\xff\xfe") || strings.HasPrefix(start, "\xfe\xff"):
		r.refuse(nil, ruleText, "save it as UTF-8", "the file is in UTF-16")
	case strings.HasPrefix(trimmed, "<svg") || strings.HasPrefix(trimmed, "<?xml") || dxfStart(trimmed):
		r.refuse(nil, ruleText, "give the job file, which names the drawing under part: outline:", "this is a drawing, not a job file")
	default:
		return r.onlyText(data)
	}
	return false
}

func dxfStart(s string) bool {
	head, rest, _ := strings.Cut(s, "\n")
	return strings.TrimSpace(head) == "0" && strings.HasPrefix(strings.TrimSpace(rest), "SECTION") || strings.HasPrefix(s, "AutoCAD Binary")
}

// onlyText refuses bytes that are no UTF-8 and characters that no text holds.
func (r *reading) onlyText(data []byte) bool {
	at := place{1, 1}
	for i := 0; i < len(data); {
		c, size := rune(data[i]), 1
		if c >= utf8.RuneSelf {
			c, size = utf8.DecodeRune(data[i:])
		}
		switch {
		case c == utf8.RuneError && size == 1:
			r.refuse(at.node(), ruleText, "save the file as UTF-8", "byte 0x%02X is not UTF-8", data[i])
			return false
		case c < ' ' && c != '\n' && c != '\r' && c != '\t' || c >= 0x7f && c < 0xa0 && c != 0x85 || c == 0xfffe || c == 0xffff || c == 0xfeff:
			r.refuse(at.node(), ruleText, "take it out", "a character that is no text stands here (U+%04X)", c)
			return false
		}
		at.column++
		if c == '\n' {
			at = place{at.line + 1, 1}
		}
		i += size
	}
	return true
}

// place is a line and a column of the file, from 1.
type place struct{ line, column int }

func (p place) node() *yaml.Node { return &yaml.Node{Line: p.line, Column: p.column} }

// tabs refuses tabs in front of a line's text: YAML counts indentation in
// spaces. The first line with one is named, and how many there are.
func (r *reading) tabs(data []byte) {
	var first place
	count := 0
	for i, line := range strings.Split(string(data), "\n") {
		text := strings.TrimLeft(line, " \t")
		indent := line[:len(line)-len(text)]
		tab := strings.IndexByte(indent, '\t')
		if tab < 0 || strings.TrimSpace(text) == "" || text[0] == '#' {
			continue
		}
		if count++; count == 1 {
			first = place{i + 1, tab + 1}
		}
	}
	switch count {
	case 0:
	case 1:
		r.refuse(first.node(), ruleTabs, "use spaces", "the line is indented with a tab")
	default:
		r.refuse(first.node(), ruleTabs, "use spaces", "this line and %d more are indented with tabs", count-1)
	}
}
