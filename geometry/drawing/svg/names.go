package svg

import "slices"

// Names lists what parts of the drawing can be chosen by: the labels and ids of
// groups in their order, then those of shapes; each once.
func Names(root *Element) []string {
	seen := map[string]bool{}
	var groups, shapes []string
	var visit func(e *Element)
	visit = func(e *Element) {
		for _, name := range e.names() {
			switch {
			case seen[name] || e.foreign:
				continue
			case isGroup(e.Name):
				groups = append(groups, name)
			case isShape(e.Name) || e.Name == "use":
				shapes = append(shapes, name)
			}
			seen[name] = true
		}
		for _, c := range e.Children {
			visit(c)
		}
	}
	for _, c := range root.Children {
		visit(c)
	}
	return append(groups, shapes...)
}

// names gives an element's label and id.
func (e *Element) names() []string {
	var out []string
	for _, key := range []string{"label", "id"} {
		if v, ok := e.get(key); ok && v != "" {
			out = append(out, v)
		}
	}
	return out
}

func isGroup(name string) bool {
	return name == "g" || name == "a" || name == "svg" || name == "switch"
}

func isShape(name string) bool {
	switch name {
	case "path", "rect", "circle", "ellipse", "line", "polyline", "polygon":
		return true
	}
	return false
}

// named adds an element's label and id to the names it can be chosen by, and
// finds the layer it is listed under: the innermost group marked as a layer, or
// else the outermost group with a name.
func (s state) named(e *Element) state {
	own := e.names()
	if len(own) == 0 {
		return s
	}
	s.names = append(slices.Clip(s.names), own...)
	if !isGroup(e.Name) {
		return s
	}
	mode, _ := e.get("groupmode")
	if mode == "layer" || (!s.fixed && s.layer == "") {
		s.layer, s.fixed = own[0], mode == "layer"
	}
	return s
}
