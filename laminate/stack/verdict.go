package stack

import (
	"fmt"
	"strings"
)

// scale says what a coupling is measured by.
const scale = "0: not at all; 0.87: two equal layers at right angles"

// figure prints a coupling or a distance with three places, and what is less
// as such.
func figure(v float64) string {
	if v > 0 && v < 0.0005 {
		return "less than 0.001"
	}
	return decimal(v, 3)
}

// Short gives both verdicts in a few words: "symmetric, balanced".
func (j Judgement) Short() string {
	balance := "balanced"
	if !j.Balanced {
		balance = "not balanced"
	}
	return j.mirrorWords() + "; " + balance
}

func (j Judgement) mirrorWords() string {
	switch {
	case j.Mirror:
		return "symmetric"
	case !j.Couples() && j.Alike:
		return "not a mirror, but does not couple (B = 0)"
	case !j.Couples():
		return "not symmetric (no coupling by direction, but different cloth)"
	case j.Coupling <= Near:
		return "close to symmetric, not symmetric (coupling " + figure(j.Coupling) + ")"
	}
	return "not symmetric (coupling " + figure(j.Coupling) + ")"
}

// symmetry gives the verdict in a sentence with what it means.
func (j Judgement) symmetry() string {
	switch {
	case j.Mirror:
		return "Symmetric: layer by layer the same from the middle up and from the middle down. It does not bend when it is pulled, nor warp by its layers when it cools."
	case !j.Couples() && j.Alike:
		return "Not a mirror, but it does not couple (B = 0): it does not bend when it is pulled."
	case !j.Couples():
		return "Not symmetric. By the directions of its fibre alone it would not couple, but its cloth differs: see the stiffness."
	case j.Coupling <= Near:
		return "Close to symmetric, but not symmetric: it couples by " + figure(j.Coupling) + " (" + scale + "). Expect some bend or twist when it is pulled, and some warp when it cools."
	}
	return "Not symmetric: it couples by " + figure(j.Coupling) + " (" + scale + "). It bends or twists when it is pulled, and may warp when it cools."
}

// balance gives the verdict with what leans.
func (j Judgement) balance() string {
	if j.Balanced {
		return "Balanced: as much fibre at every angle as at its opposite."
	}
	var words []string
	for _, l := range j.Leaning {
		words = append(words, fmt.Sprintf("%s at %s against %s at %s", gsm(l.Plus), degrees(l.Angle), gsm(l.Minus), degrees(-l.Angle)))
	}
	return "Not balanced: " + strings.Join(words, "; ") + ". It shears when it is pulled along 0° or 90°."
}

// quasi says how far the stack is from quasi-isotropic.
func (j Judgement) quasi() string {
	m := j.Moments
	return fmt.Sprintf("Distance from quasi-isotropic: %s in the plane, %s in bending (0: as stiff in every direction; 1: all fibre in one direction).",
		figure(m.A.fromQuasi()), figure(m.D.fromQuasi()))
}

// lamination prints the twelve lamination parameters.
func (m Moments) lamination() [][]string {
	rows := [][]string{{"", "cos 2θ", "sin 2θ", "cos 4θ", "sin 4θ"}}
	for _, r := range []struct {
		name string
		p    Parameters
	}{{"A, in the plane", m.A}, {"B, coupling", m.B}, {"D, in bending", m.D}} {
		row := []string{r.name}
		for _, v := range r.p {
			row = append(row, decimal(v, 4))
		}
		rows = append(rows, row)
	}
	return rows
}

// shareRows prints how much fibre lies in each direction.
func (j Judgement) shareRows() [][]string {
	rows := [][]string{{"direction", "fibre", "share"}}
	all := 0.0
	for _, l := range j.Layers {
		all += l.GSM
	}
	for _, s := range j.Shares {
		rows = append(rows, []string{degrees(s.Angle.Degrees()), gsm(s.GSM), percent(s.Part)})
	}
	if j.Random > 0 {
		rows = append(rows, []string{"none (mat)", gsm(j.Random * all), percent(j.Random)})
	}
	return rows
}

// groupLines names equal layers that lie on each other.
func (j Judgement) groupLines() []string {
	var out []string
	for _, g := range j.Groups {
		from, to := j.Layers[g.From], j.Layers[g.To]
		out = append(out, fmt.Sprintf("%d layers at %s lie on each other, from %s to %s: more than %d (common practice, no source).",
			g.To-g.From+1, degrees(from.Angle().Degrees()), from.name(), to.name(), Grouped))
	}
	if len(out) == 0 {
		out = append(out, fmt.Sprintf("No more than %d equal layers lie on each other (common practice, no source).", Grouped))
	}
	return out
}

// surface names the outermost layers.
func (j Judgement) surface() string {
	if len(j.Layers) == 0 {
		return ""
	}
	low, high := j.Layers[0], j.Layers[len(j.Layers)-1]
	return fmt.Sprintf("On the tool: %s (%s, %s). On the bag side: %s (%s, %s).", low.lie(), low.name(), low.Fabric, high.lie(), high.name(), high.Fabric)
}

// mostOdd is how many pairs of plies oddLines names.
const mostOdd = 12

// oddLines says which layers are no mirror of each other, by the plies they
// belong to.
func (j Judgement) oddLines() []string {
	var heads []string
	parts := map[string][]string{}
	for _, o := range j.Odd {
		low, high := j.Layers[o.Low], j.Layers[o.High]
		head := low.owner() + " and " + high.owner()
		if low.owner() == high.owner() {
			head = low.owner() + " in itself"
		}
		if parts[head] == nil {
			heads = append(heads, head)
		}
		parts[head] = append(parts[head], low.against(high))
	}
	var out []string
	for i, h := range heads {
		if i == mostOdd {
			out = append(out, "and "+counted(len(heads)-i, "more pair", "more pairs"))
			break
		}
		out = append(out, h+": "+strings.Join(parts[h], ", "))
	}
	return out
}

// owner names the ply or core of a layer.
func (l Layer) owner() string {
	if l.Kind == CoreKind {
		return "core " + l.Fabric
	}
	return "ply " + number(l.Ply)
}

// against says in what two layers differ.
func (l Layer) against(other Layer) string {
	a, b := l.lie(), other.lie()
	if a == b {
		a, b = a+" of "+l.Fabric, b+" of "+other.Fabric
	}
	return a + " opposite " + b
}
