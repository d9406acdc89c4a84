package code

// Limits of a code: plies when written out, groups within groups, characters.
const (
	mostPlies  = 2000
	mostDepth  = 12
	mostLetter = 1000
)

// Code is a schedule code, read. A sound one comes from Parse or Write.
type Code struct {
	Terms    []Term
	Times    int  // how often the list is laid, at least 1; before it is mirrored
	Mirrored bool // s
	Total    bool // T: the list is all there is
}

// Pair says which sign of a pair comes first.
type Pair int

// A term is one angle, or a pair of angles of opposite sign.
const (
	Single    Pair = iota
	PlusMinus      // ±
	MinusPlus      // ∓
)

// Term is one angle of a code, a pair of angles, or a group.
type Term struct {
	Angle    float64 // degrees as written, -180…180; of a pair not negative
	Pair     Pair
	Woven    bool   // f or w
	Middle   bool   // with a bar: the middle ply of a mirrored list
	Group    []Term // a group, nil for an angle
	Mirrored bool   // of a group
	Times    int    // at least 1; of a group before it is mirrored
}

// Ply is one ply of a code: the direction of its roll in degrees, as written.
type Ply struct {
	Angle float64
	Woven bool
}

// Plies writes a code out, first ply laid first.
func (c Code) Plies() []Ply {
	return expand(c.Terms, c.Times, c.Mirrored)
}

// expand lays a list as often as said and mirrors it; a ply with a bar is not
// mirrored.
func expand(terms []Term, times int, mirrored bool) []Ply {
	var once []Ply
	for _, t := range terms {
		once = append(once, t.plies()...)
	}
	var out []Ply
	for range times {
		out = append(out, once...)
	}
	if !mirrored {
		return out
	}
	last := len(out) - 1
	if terms[len(terms)-1].Middle {
		last--
	}
	for i := last; i >= 0; i-- {
		out = append(out, out[i])
	}
	return out
}

// plies writes one term out.
func (t Term) plies() []Ply {
	if t.Group != nil {
		return expand(t.Group, t.Times, t.Mirrored)
	}
	var out []Ply
	for range t.Times {
		switch t.Pair {
		case Single:
			out = append(out, Ply{t.Angle, t.Woven})
		case PlusMinus:
			out = append(out, Ply{t.Angle, t.Woven}, Ply{opposite(t.Angle), t.Woven})
		case MinusPlus:
			out = append(out, Ply{opposite(t.Angle), t.Woven}, Ply{t.Angle, t.Woven})
		}
	}
	return out
}

// Mirrors says whether the code mirrors its plies, or those of a group.
func (c Code) Mirrors() bool {
	return c.Mirrored || mirrors(c.Terms)
}

func mirrors(terms []Term) bool {
	for _, t := range terms {
		if t.Mirrored || mirrors(t.Group) {
			return true
		}
	}
	return false
}

// opposite gives -a, and 0 for 0.
func opposite(a float64) float64 { return 0 - a }

// count gives how many plies a list makes, stopping beyond mostPlies.
func count(terms []Term, times int, mirrored bool) int {
	n := 0
	for _, t := range terms {
		switch {
		case t.Group != nil:
			n += count(t.Group, t.Times, t.Mirrored)
		case t.Pair != Single:
			n += 2 * t.Times
		default:
			n += t.Times
		}
	}
	n *= times
	if mirrored {
		n *= 2
	}
	return min(n, mostPlies+2)
}
