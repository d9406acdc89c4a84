package svg

import (
	"fmt"
	"slices"
	"strings"
)

// placed are the elements whose x, y, width and height a style may set.
var placed = []string{"rect", "svg", "use", "symbol", "image", "foreignObject"}

// takes says whether a property of a style stands for the attribute of that
// name on an element: SVG 2, section 5.11 and 7 to 10.
func takes(element, property string) bool {
	switch property {
	case "x", "y", "width", "height":
		return slices.Contains(placed, element)
	case "cx", "cy":
		return element == "circle" || element == "ellipse"
	case "r":
		return element == "circle"
	case "rx", "ry":
		return element == "rect" || element == "ellipse"
	case "d":
		return element == "path"
	}
	return slices.Contains(shaping, property)
}

// effective gives the element with the attributes that its style replaces; an
// error names what is not read.
func (e *Element) effective(styled []Attribute) (*Element, error) {
	out := e
	for _, a := range styled {
		if slices.Contains(moving, a.Name) && !slices.Contains([]string{"none", "auto", "normal", "1", "0"}, a.Value) {
			return e, fmt.Errorf("%s set by style is not read", a.Name)
		}
		if !slices.Contains(shaping, a.Name) || !takes(e.Name, a.Name) {
			continue
		}
		value, err := stylistic(a)
		if err != nil {
			return e, err
		}
		if out == e {
			changed := *e
			changed.Attr, changed.original = slices.Clone(e.Attr), e.self()
			out = &changed
		}
		out.set(a.Name, value)
		if a.Name == "transform" {
			out.set(byStyle, "yes")
		}
	}
	return out, nil
}

// byStyle marks an element whose transform is written as CSS has it.
const byStyle = "transform set by style"

// stylistic gives the value of a property as the attribute of that name would
// have it.
func stylistic(a Attribute) (string, error) {
	switch a.Name {
	case "d":
		if a.Value == "none" {
			return "", nil
		}
		inside, ok := strings.CutPrefix(a.Value, "path(")
		inside, shut := strings.CutSuffix(inside, ")")
		inside = strings.TrimSpace(inside)
		if n := len(inside); ok && shut && n > 1 && inside[0] == inside[n-1] && strings.ContainsRune(`"'`, rune(inside[0])) {
			return inside[1 : n-1], nil
		}
		return "", fmt.Errorf("d set by style is not read: %q", a.Value)
	case "x", "y", "width", "height", "cx", "cy", "r", "rx", "ry":
		if l, err := parseLength(a.Value); err == nil && l.unit == "" && l.value != 0 {
			return "", fmt.Errorf("%s set by style has no unit: %q", a.Name, a.Value)
		}
	}
	return a.Value, nil
}

// self gives the element as it stands in the file.
func (e *Element) self() *Element {
	if e.original != nil {
		return e.original
	}
	return e
}

// set replaces an attribute.
func (e *Element) set(name, value string) {
	e.Attr = slices.DeleteFunc(e.Attr, func(a Attribute) bool { return a.Name == name })
	e.Attr = append(e.Attr, Attribute{name, value})
}
