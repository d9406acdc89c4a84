package job

import (
	"strings"

	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/length"
	"stripwright/laminate"
)

// resin reads the resin: its density is needed, what else it leaves out is
// either not worked out or assumed and noted.
func (r *reading) resin(top block) {
	n := top.value("resin")
	if n == nil {
		return
	}
	b, ok := r.block(n, top.keys["resin"], "resin", resinKeys)
	if !ok {
		return
	}
	s := laminate.Resin{Name: "resin"}
	if n := b.value("name"); n != nil {
		s.Name, _ = r.name(n, "name", mostName)
	}
	s.DensityGCM3 = r.resinDensity(b, s.Name)
	r.resinShare(b, &s)
	s.BandPoints = r.figure(b, "band", points)
	s.LinesAndPotG = r.otherwise(b, "lines_and_pot", r.figure(b, "lines_and_pot", heldMasses), 0, "not written in the job",
		"no resin held by feed lines and pot: write lines_and_pot: with what yours hold")
	s.SparePercent = r.otherwise(b, "spare", r.figure(b, "spare", percents), 0, "not written in the job", "no spare resin: spare 0 %%")
	if n := b.value("mix"); n != nil {
		s.Mix = r.mix(n, b.keys["mix"])
	} else if !b.has("mix") {
		r.note(b.at, "mix", "no mix is written: resin and hardener cannot be told apart; write mix: {by: weight, parts: [100, 30]} from the data sheet")
	}
	s.BatchG = r.massOr(b, "batch", batches)
	s.SoldByG = r.massOr(b, "sold_by", batches)
	s.OnHandG = r.massOr(b, "on_hand", heldMasses)
	if n := b.value("price"); n != nil {
		s.PricePerKG, s.HasPrice = r.measured(n, "price", kiloPrices)
	}
	r.job.Resin = &s
}

// massOr reads a mass that may be left out, then 0.
func (r *reading) massOr(b block, key string, m measure) float64 {
	n := b.value(key)
	if n == nil {
		return 0
	}
	g, _ := r.measured(n, key, m)
	return geometry.Snap(g)
}

// resinDensity reads the density of the cured resin; it comes from the library
// only where the name is that of a kind of resin.
func (r *reading) resinDensity(b block, name string) laminate.Figure {
	if b.has("density") {
		return r.figure(b, "density", resinDensities)
	}
	kind, known := r.library.Resin(name)
	if f := kind.DensityGCM3; known && f.Known() {
		if f.Basis == laminate.Assumed {
			r.assume(b.keys["name"], "density", "resin density %v g/cm3 of %s, a table value", f.Value, strings.ToLower(name))
		}
		return f
	}
	cure := "write density: 1.15 g/cm3 from the data sheet, or name it " + strings.Join(r.library.ResinNames(), ", ") + " for a table value"
	if near := length.Nearest(strings.ToLower(name), r.library.ResinNames()); near != "" {
		cure = "write density: from the data sheet; or did you mean name: " + near + ", for a table value?"
	}
	b.need("density", cure)
	return laminate.Figure{}
}

// resinShare reads how much of the laminate is fibre, said in one of three ways.
func (r *reading) resinShare(b block, s *laminate.Resin) {
	switch r.atMostOne(b, "fibre_volume", "fibre_mass", "resin_ratio") {
	case "fibre_volume":
		s.FibreVolume = r.figure(b, "fibre_volume", fibreVolumes)
	case "fibre_mass":
		s.FibreMass = r.figure(b, "fibre_mass", fibreMasses)
	case "resin_ratio":
		if f := r.figure(b, "resin_ratio", ratios); f.Known() {
			s.FibreMass = laminate.Figure{Value: toNano(1 / (1 + f.Value)), Basis: laminate.Computed, From: "resin ratio " + strings.TrimSpace(b.value("resin_ratio").Value)}
		}
	}
}

// mix reads how resin and hardener are mixed. By volume the densities of both
// are needed, by weight they may be given.
func (r *reading) mix(n, at *yaml.Node) *laminate.Mix {
	b, ok := r.block(n, at, "mix", mixKeys)
	if !ok {
		return nil
	}
	var m laminate.Mix
	if n := b.need("by", "write by: weight, or by: volume"); n != nil {
		word, _ := r.choice(n, "by", "weight", "volume")
		m.ByVolume = word == "volume"
	}
	if n := b.need("parts", "write parts: [100, 30], of resin and of hardener"); n != nil {
		m.PartsA, m.PartsB = r.two(n, "parts", "parts of resin and parts of hardener", mixParts)
	}
	switch n := b.value("densities"); {
	case n != nil:
		m.DensityAGCM3, m.DensityBGCM3 = r.two(n, "densities", "density of resin and density of hardener", r.bareDensities())
	case m.ByVolume:
		b.need("densities", "write densities: [1.13, 0.98] in g/cm3, of resin and of hardener, from the data sheet; or give the mix by weight")
	}
	return &m
}

// bareDensities are densities of liquids; a number without a unit is in g/cm³.
func (r *reading) bareDensities() measure {
	m := measure{nil, 0.5, 2.5, "0.5 to 2.5 g/cm3"}
	m.parse = func(s string) (float64, error) {
		if length.Bare(s) {
			s += " g/cm3"
		}
		return length.ParseDensity(s)
	}
	return m
}

// two reads a list of two values.
func (r *reading) two(n *yaml.Node, rule, what string, m measure) (a, b float64) {
	items, ok := r.list(n, rule, "["+strings.ReplaceAll(what, " and ", ", ")+"]")
	if !ok || !r.pair(n, items, rule, what) {
		return 0, 0
	}
	a, _ = r.measured(items[0], rule, m)
	b, _ = r.measured(items[1], rule, m)
	return a, b
}
