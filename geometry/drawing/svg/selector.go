package svg

import (
	"slices"
	"strings"
)

// selector says which elements a rule of a style sheet is for: the last part
// must fit the element, the others those around it.
type selector struct {
	parts  []compound
	weight int
}

// compound is "rect", ".a", "#b", "*" or several of them glued; what is empty
// fits all. child says that what stands before it must hold it directly.
type compound struct {
	name, id string
	classes  []string
	child    bool
}

// mostParts bounds a selector, as each part may be any of the elements around.
const mostParts = 4

// parseSelector reads names, classes and ids, with blanks or > between them;
// simple is false for anything else.
func parseSelector(text string) (s selector, simple bool) {
	if strings.ContainsAny(text, "+~:[@\\|()") {
		return s, false
	}
	child := false
	for _, word := range strings.Fields(strings.ReplaceAll(text, ">", " > ")) {
		if word == ">" {
			if child || len(s.parts) == 0 {
				return s, false
			}
			child = true
			continue
		}
		c, weight, ok := parseCompound(word)
		if !ok {
			return s, false
		}
		c.child = child
		s.parts, s.weight, child = append(s.parts, c), s.weight+weight, false
	}
	return s, !child && len(s.parts) > 0 && len(s.parts) <= mostParts
}

func parseCompound(text string) (c compound, weight int, ok bool) {
	for i := 0; i < len(text); {
		end := i + 1
		for end < len(text) && text[end] != '.' && text[end] != '#' {
			end++
		}
		switch word := text[i:end]; {
		case word == "." || word == "#":
			return c, 0, false
		case word[0] == '.':
			c.classes = append(c.classes, word[1:])
			weight += 100
		case word[0] == '#':
			c.id = word[1:]
			weight += 10000
		case word != "*":
			c.name = word
			weight++
		}
		i = end
	}
	return c, weight, true
}

func (c compound) fits(e *Element) bool {
	if (c.name != "" && c.name != e.Name) || (c.id != "" && c.id != e.id) {
		return false
	}
	for _, class := range c.classes {
		if !slices.Contains(e.classes, class) {
			return false
		}
	}
	return true
}

// fits says whether the selector is for the element.
func (s selector) fits(e *Element) bool {
	n := len(s.parts)
	return s.parts[n-1].fits(e) && fitAround(s.parts, e)
}

// fitAround says whether the elements around one that the last part fits are as
// the parts before it want.
func fitAround(parts []compound, e *Element) bool {
	n := len(parts)
	if n == 1 {
		return true
	}
	for around := e.parent; around != nil; around = around.parent {
		if parts[n-2].fits(around) && fitAround(parts[:n-1], around) {
			return true
		}
		if parts[n-1].child {
			return false
		}
	}
	return false
}
