package nest

import (
	"cmp"
	"slices"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/nest/roll"
)

// cloth is a fabric of the job with its plies and the widths it comes in.
type cloth struct {
	fabric  *laminate.Fabric
	plies   []int // indices into Job.Plies
	widths  []width
	measure roll.Measure
	area    float64 // of the plies' blanks, mm²
}

// width is all rolls of a fabric with one usable width, in the order in which
// they are used.
type width struct {
	usable int64
	stock  []roll.Stock
	rolls  []int // index of each stock in Fabric.Rolls
}

// clothsOf sorts the plies by fabric, in the order of the job's fabrics;
// fabrics without plies are left out.
func clothsOf(j *laminate.Job) []cloth {
	var out []cloth
	for f := range j.Fabrics {
		c := cloth{fabric: &j.Fabrics[f], measure: measureOf(&j.Fabrics[f])}
		for i := range j.Plies {
			if j.Plies[i].Fabric == c.fabric.Name {
				c.plies = append(c.plies, i)
				c.area += j.Plies[i].Blank.Area()
			}
		}
		if len(c.plies) > 0 {
			c.widths = widthsOf(c.fabric)
			out = append(out, c)
		}
	}
	return out
}

// measureOf says what is least: the price where every roll has one, else the
// place of the last cut where a roll is finite, else the length.
func measureOf(f *laminate.Fabric) roll.Measure {
	priced, finite := true, false
	for _, r := range f.Rolls {
		priced = priced && r.HasPrice
		finite = finite || !r.Endless()
	}
	switch {
	case priced:
		return roll.Price
	case finite:
		return roll.LastCut
	}
	return roll.Length
}

// widthsOf sorts the rolls of a fabric by usable width. Where the price counts,
// the cheapest rolls of a width are used first, of equal price the remnants;
// else they are used in list order.
func widthsOf(f *laminate.Fabric) []width {
	var out []width
	for k := range f.Rolls {
		usable := int64(geometry.Micrometres(f.Rolls[k].UsableMM()))
		at := slices.IndexFunc(out, func(w width) bool { return w.usable == usable })
		if at < 0 {
			at = len(out)
			out = append(out, width{usable: usable})
		}
		out[at].rolls = append(out[at].rolls, k)
	}
	for i := range out {
		w := &out[i]
		if measureOf(f) == roll.Price {
			slices.SortStableFunc(w.rolls, func(a, b int) int { return cheaper(&f.Rolls[a], &f.Rolls[b]) })
		}
		for _, k := range w.rolls {
			r := &f.Rolls[k]
			w.stock = append(w.stock, roll.Stock{Length: int64(geometry.Micrometres(r.LengthMM)), Copies: max(1, r.Count), Price: r.PricePerMetre})
		}
	}
	return out
}

// cheaper orders rolls by price, then remnants first.
func cheaper(a, b *laminate.Roll) int {
	rank := func(r *laminate.Roll) int {
		if r.Remnant {
			return 0
		}
		return 1
	}
	return cmp.Or(cmp.Compare(a.PricePerMetre, b.PricePerMetre), cmp.Compare(rank(a), rank(b)))
}

// perMM2 gives the least cost of a mm² of the fabric's rolls, by its measure:
// mm of roll, or mm of roll times its price per metre.
func (c *cloth) perMM2() float64 { return c.least(c.widths) }

// weight gives what a µm of roll of a width costs at least, on average.
func (c *cloth) weight(w int) float64 {
	if c.measure != roll.Price {
		return 1
	}
	return float64(c.least(c.widths[w:w+1]) * geometry.Micrometre(c.widths[w].usable).MM())
}

// least gives the least cost of a mm² on average over the area of all plies,
// with no waste. Where the price counts, the cheapest rolls hold only so much:
// the dearer ones take the rest.
func (c *cloth) least(widths []width) float64 {
	var offers []offer
	for _, w := range widths {
		mm := geometry.Micrometre(w.usable).MM()
		for _, s := range w.stock {
			o := offer{per: 1 / mm, area: c.area}
			if c.measure == roll.Price {
				o.per *= s.Price
				if s.Length > 0 {
					o.area = float64(float64(mm*geometry.Micrometre(s.Length).MM()) * float64(s.Copies))
				}
			}
			offers = append(offers, o)
		}
	}
	slices.SortStableFunc(offers, func(a, b offer) int { return cmp.Compare(a.per, b.per) })
	if c.area <= offers[0].area {
		return offers[0].per
	}
	sum, left := 0.0, c.area
	for k, o := range offers {
		if k == len(offers)-1 {
			o.area = left // more than there is: the plan will be refused
		}
		taken := min(left, o.area)
		sum += float64(taken * o.per)
		left -= taken
	}
	return sum / c.area
}

// offer is rolls of one price for a mm², and the area that they have.
type offer struct{ per, area float64 }

// choice is the width taken for each ply, as an index into its cloth's widths.
type choice []int

// mostChoices bounds how many choices of width are looked at.
const mostChoices = 48

// choices lists ways to choose widths, the same for all plies of one fabric and
// direction: all combinations where they are few; else one width for each
// fabric, and from there one direction changed.
func choices(j *laminate.Job, cloths []cloth) []choice {
	sets := sameWidth(j, cloths)
	total := 1
	for _, s := range sets {
		if total *= s.widths; total > mostChoices {
			return fewChoices(j, sets)
		}
	}
	var out []choice
	for n := range total {
		c := make(choice, len(j.Plies))
		for _, s := range sets {
			s.set(c, n%s.widths)
			n /= s.widths
		}
		out = append(out, c)
	}
	return out
}

func fewChoices(j *laminate.Job, sets []widthSet) []choice {
	var out []choice
	most := 0
	for _, s := range sets {
		most = max(most, s.widths)
	}
	for w := range most {
		base := make(choice, len(j.Plies))
		for _, s := range sets {
			s.set(base, min(w, s.widths-1))
		}
		out = append(out, base)
		for _, s := range sets {
			for v := range s.widths {
				c := append(choice(nil), base...)
				s.set(c, v)
				if v != min(w, s.widths-1) && len(out) < mostChoices {
					out = append(out, c)
				}
			}
		}
	}
	return out
}

// widthSet is the plies that take one width together.
type widthSet struct {
	plies  []int
	widths int
}

func (s widthSet) set(c choice, w int) {
	for _, i := range s.plies {
		c[i] = w
	}
}

// sameWidth groups plies by fabric and direction, in ply order.
func sameWidth(j *laminate.Job, cloths []cloth) []widthSet {
	var out []widthSet
	for k := range cloths {
		at := make(map[geometry.Angle]int)
		for _, i := range cloths[k].plies {
			a := j.Plies[i].Angle()
			if _, ok := at[a]; !ok {
				at[a] = len(out)
				out = append(out, widthSet{widths: len(cloths[k].widths)})
			}
			s := &out[at[a]]
			s.plies = append(s.plies, i)
		}
	}
	return out
}
