package drawing

import (
	"slices"
	"strings"

	"stripwright/geometry/drawing/contour"
	"stripwright/geometry/drawing/trace"
)

// choice is the set of layer names to be taken; nil takes all.
type choice map[string]bool

// chooseLayers finds each wanted name among those that the drawing has: exactly,
// or else without regard to capitals. One that is not there is a problem.
func chooseLayers(wanted, present []string, r *trace.Report) choice {
	if len(wanted) == 0 {
		return nil
	}
	c := choice{}
	for _, want := range wanted {
		found := slices.Contains(present, want)
		if found {
			c[want] = true
			continue
		}
		for _, name := range present {
			if strings.EqualFold(name, want) {
				c[name], found = true, true
			}
		}
		if !found {
			r.Problem("layer", r.File, "name one of these: "+listed(present), "the drawing has no layer %q", want)
		}
	}
	return c
}

func listed(names []string) string {
	const most = 30
	if len(names) == 0 {
		return "(it has none)"
	}
	more := ""
	if len(names) > most {
		names, more = names[:most], " …"
	}
	out := make([]string, len(names))
	for i, n := range names {
		out[i] = trace.Printable(n)
	}
	return strings.Join(out, ", ") + more
}

func (c choice) takes(names ...string) bool {
	return c == nil || slices.ContainsFunc(names, func(n string) bool { return c[n] })
}

// take gives the lines that are chosen.
func (c choice) take(lines []trace.Line) []trace.Line {
	if c == nil {
		return lines
	}
	var out []trace.Line
	for _, l := range lines {
		if c.takes(l.Names...) {
			out = append(out, l)
		}
	}
	return out
}

// layersOf lists the layers of all lines with the contours that each makes by
// itself; those taken are joined already.
func layersOf(lines, taken []trace.Line, joined contour.Joined, joinMM float64) []Layer {
	by := map[string][]trace.Line{}
	for _, l := range lines {
		by[l.Layer] = append(by[l.Layer], l)
	}
	var out []Layer
	for name, ls := range by {
		if len(ls) != len(lines) || len(taken) != len(lines) {
			out = append(out, Layer{name, len(contour.Join(ls, joinMM).Rings)})
			continue
		}
		out = append(out, Layer{name, len(joined.Rings)})
	}
	slices.SortFunc(out, func(a, b Layer) int { return strings.Compare(a.Name, b.Name) })
	return out
}
