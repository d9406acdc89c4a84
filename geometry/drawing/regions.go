package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/drawing/contour"
	"stripwright/geometry/drawing/trace"
)

// farthest bounds coordinates in mm: within 4,000 km a float64 still tells
// thousandths of a micrometre, and geometry.Crossing reaches as far.
const farthest = 4e9

// mostContours bounds the contours of one drawing; a part with more is a
// hatching or a map.
const mostContours = 10000

// regions goes from lines in mm to the regions they enclose.
func (rd *reading) regions(lines []trace.Line, chosen choice, d *Drawing) {
	r := rd.report
	for _, l := range lines {
		if !l.Finite(farthest) {
			r.Problem("size", r.Line(l.At), "draw the part at its real size near the origin", "a coordinate is farther than 4,000 km away")
			return
		}
	}
	taken := chosen.take(lines)
	j := contour.Join(taken, rd.options.JoinMM)
	d.Layers = layersOf(lines, taken, j, rd.options.JoinMM)
	if len(r.Problems) > 0 {
		return
	}
	if len(taken) == 0 {
		rd.tellEmpty(lines)
		return
	}
	cure := layerCure(d.Layers)
	rd.tellJoined(j, cure)
	rings := rd.sound(j.Rings, cure)
	if len(r.Problems) > 0 {
		return
	}
	if len(rings) == 0 {
		r.Problem("empty", r.File, "draw the outline at its real size", "there is no outline to lay up; all lines are shorter than a hundredth of a millimetre")
		return
	}
	rd.choose(contour.Nest(rings), d)
	rd.tellLayers(taken, d)
}

// tellEmpty says that there is nothing, and what there is instead.
func (rd *reading) tellEmpty(lines []trace.Line) {
	r, found := rd.report, ""
	if s := r.LeftOut(); s != "" {
		found = "; it holds only " + s
	}
	if len(lines) > 0 {
		found = "; on other layers: " + trace.Count(len(lines), "line")
	}
	r.Problem("empty", r.File, "draw the outline as lines, arcs or paths on a visible layer; text counts only once it is converted to paths",
		"there is no outline to lay up%s", found)
}

// layerCure says how to name the layer of the outline, with those to choose
// from.
func layerCure(layers []Layer) string {
	cure := "name the layer of the outline"
	if len(layers) < 2 {
		return cure
	}
	names := make([]string, len(layers))
	for i, l := range layers {
		names[i] = l.Name
	}
	return cure + " (" + listed(names) + ")"
}

// tellJoined tells what joining did and could not do.
func (rd *reading) tellJoined(j contour.Joined, layerCure string) {
	r := rd.report
	if j.Duplicates > 0 {
		r.Note("duplicate", "%s drawn twice: taken once", trace.Count(j.Duplicates, "line"))
	}
	if j.Overlaps > 0 {
		r.Note("overlap", "%s drawn partly on others: counted once there", trace.Count(j.Overlaps, "line"))
	}
	if n := len(j.Gaps); n > 0 {
		big := j.Gaps[0]
		for _, g := range j.Gaps {
			if g.Size > big.Size {
				big = g
			}
		}
		r.Note("gap", "%s closed, the biggest %s mm at %s", trace.Count(n, "gap"), trace.Number(big.Size), trace.Place(big.From))
	}
	for _, p := range j.Branches {
		r.Problem("branch", r.At(p), "keep only the lines of the outline, or "+layerCure, "lines branch here: an odd number of ends meet")
	}
	for _, g := range j.Open {
		rule, cure := "open", "close it in the drawing, or "+layerCure
		if g.Size <= 5 {
			rule = "gap"
			cure = fmt.Sprintf("close it in the drawing, or allow it with join: %s", trace.Number(math.Ceil(g.Size*10)/10))
		}
		r.Problem(rule, r.At(g.From), cure, "open contour: ends at %s and %s, %s mm apart",
			trace.Place(g.From), trace.Place(g.To), trace.Number(g.Size))
	}
}

// sound gives the contours that enclose something and cross nothing.
func (rd *reading) sound(rings []orb.Ring, layerCure string) []orb.Ring {
	r := rd.report
	if len(rings) > mostContours {
		r.Problem("size", r.File, "keep only the outline in the drawing, or "+layerCure, "the drawing has more than %d contours", mostContours)
		return nil
	}
	var full []orb.Ring
	for _, ring := range rings {
		if at, flat := contour.Flat(ring); flat {
			r.Problem("zero-area", r.At(at), "draw the outline as a shape that encloses something", "a contour encloses no area: all its points lie on one line")
			continue
		}
		full = append(full, ring)
	}
	if at, found := geometry.Crossing(full...); found {
		r.Problem("crossing", r.At(at), "draw each contour once and free of crossings, or "+layerCure,
			"contours cross or lie on one another at %s", trace.Place(at))
	}
	var out []orb.Ring
	for _, ring := range full {
		out = append(out, contour.AtPinches(ring)...)
	}
	return out
}

// choose takes the outlines that are asked for and tells what else there is.
func (rd *reading) choose(nested []contour.Nested, d *Drawing) {
	r := rd.report
	islands := 0
	for _, n := range nested {
		if n.Depth > 0 {
			islands++
		}
	}
	if islands > 0 {
		r.Note("island", "%s: solid inside a hole, a region of its own", trace.Count(islands, "island"))
	}
	if len(nested) > 1 {
		r.Note("several", "%d separate outlines, to be chosen from by their number (which): %s", len(nested), described(nested))
	}
	if w := rd.options.Which; w > len(nested) {
		r.Problem("which", r.File, fmt.Sprintf("choose one from 1 to %d", len(nested)), "there is no outline number %d", w)
		return
	} else if w > 0 {
		nested = nested[w-1 : w]
	}
	bound := nested[0].Region.Bounds()
	for _, n := range nested {
		d.Regions = append(d.Regions, n.Region)
		d.AreaMM2 += n.Region.Area()
		bound = bound.Union(n.Region.Bounds())
	}
	d.SizeMM = [2]float64{geometry.Snap(bound.Max[0] - bound.Min[0]), geometry.Snap(bound.Max[1] - bound.Min[1])}
	rd.tellSize(nested, d)
}

// guessed says whether the unit is one that the drawing does not quite state.
func (rd *reading) guessed() bool {
	return slices.ContainsFunc(rd.report.Notes, func(n Note) bool {
		return n.Rule == "unit" && strings.HasSuffix(n.Text, "check the size")
	})
}

func described(nested []contour.Nested) string {
	const most = 12
	var out []string
	for i, n := range nested {
		if i == most {
			out = append(out, "…")
			break
		}
		w, h := n.Region.Size()
		out = append(out, fmt.Sprintf("%d: %s x %s mm at %s", i+1, trace.Number(w), trace.Number(h), trace.Place(n.Region.Bounds().Min)))
	}
	return strings.Join(out, "; ")
}

// tellSize tells sizes that no part has, and contours that are specks.
func (rd *reading) tellSize(nested []contour.Nested, d *Drawing) {
	r := rd.report
	long := math.Max(d.SizeMM[0], d.SizeMM[1])
	size := fmt.Sprintf("%s x %s mm", trace.Number(d.SizeMM[0]), trace.Number(d.SizeMM[1]))
	switch {
	case long < 20:
		r.Note("size", "the part is only %s: check the unit", size)
	case long > 20000:
		r.Note("size", "the part is %s, over 20 m: check the unit", size)
	case rd.guessed():
		r.Note("size", "the part comes out at %s", size)
	}
	specks := 0
	for _, n := range nested {
		for _, ring := range n.Region.Rings() {
			if math.Abs(geometry.SignedArea(ring)) < 1 {
				specks++
			}
		}
	}
	if specks > 0 {
		r.Note("tiny", "%s of less than 1 mm²: check for specks", trace.Count(specks, "contour"))
	}
}

// tellLayers tells, when no layer was named, that the contours come from
// several.
func (rd *reading) tellLayers(taken []trace.Line, d *Drawing) {
	if len(rd.options.Layers) > 0 {
		return
	}
	var names []string
	for _, l := range d.Layers {
		if l.Contours > 0 {
			names = append(names, fmt.Sprintf("%q", trace.Printable(l.Name)))
		}
	}
	if len(names) > 1 {
		rd.report.Note("layers", "contours come from %d layers (%s): all were taken; name the layer of the outline if it is one of them",
			len(names), listed(names))
	}
}
