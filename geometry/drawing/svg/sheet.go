package svg

import (
	"slices"
	"strings"

	"stripwright/geometry/drawing/trace"
)

// sheet holds the rules of the drawing's style elements, weakest first.
type sheet []styleRule

// styleRule applies declarations to the elements that its selector is for.
type styleRule struct {
	selector
	declared properties
}

// properties of a style with their values; the urgent ones, marked
// !important, win over all others.
type properties struct{ plain, urgent []Attribute }

// Properties of a style that matter here: painting decides whether something is
// seen, shaping is read instead of the attribute of the same name, moving would
// change an outline and is not read from a style.
var (
	painting = []string{"display", "visibility", "opacity", "fill", "stroke", "fill-opacity", "stroke-opacity", "stroke-width"}
	shaping  = []string{"x", "y", "width", "height", "cx", "cy", "r", "rx", "ry", "d", "transform", "transform-origin", "transform-box", "clip-path", "mask", "overflow", "overflow-x", "overflow-y"}
	moving   = []string{"translate", "rotate", "scale", "offset-path", "offset", "zoom", "mask-image", "clip"}
)

// declarations reads "display:none; fill:red !important".
func declarations(text string) (d properties) {
	for part := range strings.SplitSeq(withoutComments(text), ";") {
		name, value, ok := strings.Cut(part, ":")
		if !ok {
			continue
		}
		value, after, urgent := strings.Cut(value, "!")
		a := Attribute{strings.ToLower(strings.TrimSpace(name)), strings.TrimSpace(value)}
		if urgent && strings.EqualFold(strings.TrimSpace(after), "important") {
			d.urgent = append(d.urgent, a)
		} else {
			d.plain = append(d.plain, a)
		}
	}
	return d
}

// matter says whether any of the properties decides about an outline.
func (d properties) matter() bool {
	return slices.ContainsFunc(append(slices.Clip(d.plain), d.urgent...), func(a Attribute) bool {
		return slices.Contains(painting, a.Name) || slices.Contains(shaping, a.Name) || slices.Contains(moving, a.Name)
	})
}

// mostRules bounds the rules of a style sheet.
const mostRules = 500

const styleCure = "set the style on the elements themselves"

// parseSheet reads a style element: rules for names, classes and ids, also of
// elements in others. Selectors that are not read are a problem where they
// would hide or change something, and so are styles from another file.
func parseSheet(e *Element, r *trace.Report) (out sheet) {
	text := withoutComments(string(e.text))
	refuse := func(what string) {
		r.Problem("not-read", r.Line(e.Line), styleCure, "the style sheet's rule %q is not read", trace.Printable(strings.TrimSpace(what)))
	}
	if media, ok := e.get("media"); ok && media != "all" && media != "screen" {
		refuse("media " + media)
		return nil
	}
	for {
		text = strings.TrimSpace(text)
		if statement, rest, ok := strings.Cut(text, ";"); ok && strings.HasPrefix(text, "@") && !strings.Contains(statement, "{") {
			if strings.HasPrefix(strings.ToLower(text), "@import") {
				refuse(statement)
			}
			text = rest
			continue
		}
		selectors, rest, ok := strings.Cut(text, "{")
		if !ok {
			return out
		}
		body, after, _ := strings.Cut(rest, "}")
		text = after
		found := declarations(body)
		for one := range strings.SplitSeq(selectors, ",") {
			s, simple := parseSelector(one)
			switch {
			case simple && len(out) < mostRules:
				out = append(out, styleRule{s, found})
			case found.matter() || strings.HasPrefix(one, "@media") || strings.HasPrefix(one, "@supports") || strings.HasPrefix(one, "@layer"):
				refuse(one)
				return out
			}
		}
	}
}

func withoutComments(text string) string {
	var out strings.Builder
	for {
		before, rest, found := strings.Cut(text, "/*")
		out.WriteString(before)
		if !found {
			return out.String()
		}
		out.WriteByte(' ')
		_, text, _ = strings.Cut(rest, "*/")
	}
}

// styleOf gives the declarations that apply to an element, the strongest last:
// attributes, then the sheet, then the style attribute, then what is urgent.
func (s sheet) styleOf(e *Element) (attributes, styled []Attribute) {
	for _, a := range e.Attr {
		if slices.Contains(painting, a.Name) {
			attributes = append(attributes, Attribute{a.Name, strings.TrimSpace(a.Value)})
		}
	}
	var urgent []Attribute
	for _, rule := range s {
		if rule.fits(e) {
			styled = append(styled, rule.declared.plain...)
			urgent = append(urgent, rule.declared.urgent...)
		}
	}
	if own, ok := e.get("style"); ok {
		d := declarations(own)
		styled, urgent = append(styled, d.plain...), append(urgent, d.urgent...)
	}
	return attributes, append(styled, urgent...)
}
