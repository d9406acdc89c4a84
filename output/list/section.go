package list

import "strings"

// Section is a part of a report: a heading, a table whose first row names its
// columns (no table: no rows), and sentences.
type Section struct {
	Heading string
	Table   [][]string
	Lines   []string
}

// lineWide is how wide a sentence of a report runs.
const lineWide = 100

// Text prints the section for a terminal or a printer of fixed letters, with an
// empty line behind it.
func (s Section) Text() string {
	var b strings.Builder
	b.WriteString(s.Heading + "\n\n")
	if len(s.Table) > 1 {
		b.WriteString(columns(s.Table) + "\n")
	}
	for _, l := range s.Lines {
		b.WriteString(wrapped(l))
	}
	if len(s.Lines) > 0 {
		b.WriteString("\n")
	}
	return b.String()
}

// wrapped breaks a sentence into lines, all but the first set in by two blanks
// more than the sentence is.
func wrapped(sentence string) string {
	var b strings.Builder
	set := sentence[:len(sentence)-len(strings.TrimLeft(sentence, " "))]
	b.WriteString(set)
	wide := len(set)
	for i, word := range strings.Fields(sentence) {
		n := len([]rune(word))
		switch {
		case i == 0:
		case wide+1+n > lineWide:
			b.WriteString("\n" + set + "  ")
			wide = len(set) + 2
		default:
			b.WriteString(" ")
			wide++
		}
		b.WriteString(word)
		wide += n
	}
	return b.String() + "\n"
}
