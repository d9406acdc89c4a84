package svg

import (
	"slices"
	"strings"

	"stripwright/geometry/drawing/trace"
)

// look is how an element is painted, as far as it decides whether it is seen.
type look struct {
	hidden       bool // visibility
	fill, stroke bool // painted at all
	fillGone     bool // fill-opacity 0
	strokeGone   bool // stroke-opacity 0 or no width
}

func (l look) unpainted() bool {
	return (!l.fill || l.fillGone) && (!l.stroke || l.strokeGone)
}

// sheet holds the rules of the drawing's style elements, weakest first.
type sheet []styleRule

// styleRule applies declarations to elements of a name, id and classes; what is
// empty applies to all.
type styleRule struct {
	name, id string
	classes  []string
	weight   int
	declared []Attribute
}

// painting are the properties that decide whether something is seen; moving
// those that would change an outline's shape and are not read from a style.
var (
	painting = []string{"display", "visibility", "opacity", "fill", "stroke", "fill-opacity", "stroke-opacity", "stroke-width"}
	moving   = []string{"transform", "translate", "rotate", "scale", "d", "x", "y", "cx", "cy", "r", "rx", "ry", "offset-path", "zoom"}
)

// declarations reads "display:none; fill:red".
func declarations(text string) []Attribute {
	var out []Attribute
	for part := range strings.SplitSeq(text, ";") {
		name, value, ok := strings.Cut(part, ":")
		if ok {
			value, _, _ = strings.Cut(value, "!important")
			out = append(out, Attribute{strings.ToLower(strings.TrimSpace(name)), strings.TrimSpace(value)})
		}
	}
	return out
}

const mostRules = 500

// parseSheet reads a style element: rules for names, classes and ids. Other
// selectors that would hide or move something are a problem.
func parseSheet(e *Element, r *trace.Report) sheet {
	var out sheet
	text := withoutComments(string(e.text))
	for {
		selectors, rest, ok := strings.Cut(text, "{")
		if !ok {
			return out
		}
		body, after, _ := strings.Cut(rest, "}")
		text = after
		declared := declarations(body)
		for selector := range strings.SplitSeq(selectors, ",") {
			rule, simple := parseSelector(selector)
			rule.declared = declared
			switch {
			case simple && len(out) < mostRules:
				out = append(out, rule)
			case matters(declared) || strings.HasPrefix(strings.TrimSpace(selector), "@media"):
				r.Problem("not-read", r.Line(e.Line), "set the style on the elements themselves",
					"the style sheet's rule %q is not read", trace.Printable(strings.TrimSpace(selector)))
				return out
			}
		}
	}
}

func withoutComments(text string) string {
	var out strings.Builder
	for {
		before, rest, found := strings.Cut(text, "/*")
		out.WriteString(before + " ")
		if !found {
			return out.String()
		}
		_, text, _ = strings.Cut(rest, "*/")
	}
}

// parseSelector reads "rect", ".a", "#b", "*" or several of them glued; simple
// is false for anything else.
func parseSelector(text string) (rule styleRule, simple bool) {
	text = strings.TrimSpace(text)
	if text == "" || strings.ContainsAny(text, " \t\r\n>+~:[@\\") {
		return rule, false
	}
	for i := 0; i < len(text); {
		end := i + 1
		for end < len(text) && text[end] != '.' && text[end] != '#' {
			end++
		}
		switch word := text[i:end]; {
		case word[0] == '.':
			rule.classes = append(rule.classes, word[1:])
			rule.weight += 100
		case word[0] == '#':
			rule.id = word[1:]
			rule.weight += 10000
		case word != "*":
			rule.name = word
			rule.weight++
		}
		i = end
	}
	return rule, true
}

func matters(declared []Attribute) bool {
	return slices.ContainsFunc(declared, func(a Attribute) bool {
		return slices.Contains(painting, a.Name) || slices.Contains(moving, a.Name)
	})
}

func (rule styleRule) applies(e *Element, id string, classes []string) bool {
	if rule.name != "" && rule.name != e.Name {
		return false
	}
	if rule.id != "" && rule.id != id {
		return false
	}
	for _, c := range rule.classes {
		if !slices.Contains(classes, c) {
			return false
		}
	}
	return true
}

// styleOf gives the declarations that apply to an element, the strongest last:
// attributes, then the sheet, then the style attribute.
func (s sheet) styleOf(e *Element) (attributes, styled []Attribute) {
	for _, a := range e.Attr {
		if slices.Contains(painting, a.Name) {
			attributes = append(attributes, Attribute{a.Name, strings.TrimSpace(a.Value)})
		}
	}
	if len(s) > 0 {
		id, _ := e.get("id")
		class, _ := e.get("class")
		classes := strings.Fields(class)
		for _, rule := range s {
			if rule.applies(e, id, classes) {
				styled = append(styled, rule.declared...)
			}
		}
	}
	if own, ok := e.get("style"); ok {
		styled = append(styled, declarations(own)...)
	}
	return attributes, styled
}

// change gives the look of an element inside one that looks like l, and why
// neither it nor what it holds is seen, "" if it is.
func (l look) change(style []Attribute) (look, string) {
	display, opacity := "", ""
	for _, a := range style {
		value := strings.ToLower(a.Value)
		if value == "inherit" {
			continue
		}
		switch a.Name {
		case "display":
			display = value
		case "opacity":
			opacity = value
		case "visibility":
			l.hidden = value == "hidden" || value == "collapse"
		case "fill":
			l.fill = value != "none" && value != "transparent"
		case "stroke":
			l.stroke = value != "none" && value != "transparent"
		case "fill-opacity":
			l.fillGone = zero(value)
		case "stroke-opacity", "stroke-width":
			l.strokeGone = zero(value)
		}
	}
	switch {
	case display == "none":
		return l, "not displayed (display: none)"
	case zero(opacity):
		return l, "fully transparent"
	}
	return l, ""
}

func zero(value string) bool {
	v, err := parseLength(value)
	return err == nil && v.value == 0
}
