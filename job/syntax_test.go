package job

import (
	"fmt"
	"strings"
	"testing"
)

// A mistake put into each line of the starter in turn is reported in that line
// or where its bracket or block begins, or where it first shows.
func TestSyntaxLine(t *testing.T) {
	lines := strings.Split(string(Starter()), "\n")
	for _, kind := range []struct {
		what  string
		spoil func(string) string
		late  int // lines to where it shows: a block indented too far shows at its end
	}{
		{"open bracket", func(s string) string { return cutLast(s, "}", "]") }, 1},
		{"second colon", func(s string) string { return strings.Replace(s, ": ", ": x: ", 1) }, 1},
		{"tab", func(s string) string { return "\t" + s }, 0},
		{"at sign", func(s string) string { return strings.Replace(s, ": ", ": @", 1) }, 0},
		{"one blank too many", func(s string) string { return " " + s }, 4},
	} {
		caught := 0
		for i, line := range lines {
			text, _, _ := strings.Cut(line, "#")
			if strings.TrimSpace(text) == "" || kind.spoil(text) == text {
				continue
			}
			bad := append(append(append([]string{}, lines[:i]...), kind.spoil(text)), lines[i+1:]...)
			_, problems := Parse("s.yaml", []byte(strings.Join(bad, "\n")), nil)
			if len(problems) == 0 {
				continue // harmless there
			}
			p := problems[0]
			if p.Rule != ruleYAML && p.Rule != ruleTabs {
				continue // another shape, judged as one
			}
			caught++
			if at := p.Line - 1; at < i-3 || at > i+kind.late {
				t.Errorf("%s in line %d is reported in line %d: %v", kind.what, i+1, p.Line, p)
			}
			if strings.Contains(p.Text, "this is not YAML") {
				t.Errorf("%s in line %d: no plain words for %v", kind.what, i+1, p)
			}
		}
		if caught < 5 {
			t.Errorf("%s: only %d mistakes were caught", kind.what, caught)
		}
	}
}

func cutLast(s string, ends ...string) string {
	for _, e := range ends {
		if i := strings.LastIndex(s, e); i >= 0 {
			return s[:i]
		}
	}
	return s
}

// All of a hundred wrong plies are one list of sixty and a count.
func TestManyProblems(t *testing.T) {
	var b strings.Builder
	for range 100 {
		b.WriteString("  - {fabric: ud, angle: x}\n")
	}
	_, problems := Parse("s.yaml", []byte(changed(t, "  - {fabric: ud, angle: 0}\n", b.String())), nil)
	if n := len(problems); n != mostProblems+1 || problems[n-1].Error() != fmt.Sprintf("s.yaml: more: %d more problems are not listed — cure these first", 100-mostProblems) {
		t.Errorf("%d problems, the last %v", n, problems[n-1])
	}
}

func TestDepth(t *testing.T) {
	for _, text := range []string{
		strings.Repeat("[", 20000), strings.Repeat("a: {", 20000), strings.Repeat("- ", 20000) + "x", "part: " + strings.Repeat("[", 9000) + strings.Repeat("]", 9000),
	} {
		if _, problems := Parse("s.yaml", []byte(text), nil); len(problems) == 0 {
			t.Error("a job of nothing but brackets is read")
		}
	}
}
