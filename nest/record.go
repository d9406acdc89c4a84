package nest

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/band"
	"stripwright/laminate"
	"stripwright/nest/roll"
)

// record writes a layout down as a plan.
func (p *planner) record(a *answer) laminate.Plan {
	m := newModel(p.job, p.cloths, p.bases, a.choice)
	j := p.job
	plan := laminate.Plan{
		Format: laminate.PlanFormat, Version: laminate.PlanVersion, Program: laminate.Program,
		Title: j.Title, Job: j.File, Drawings: j.Drawings, Seed: p.seed, Effort: p.effort,
		Stopped: p.ctx.Err() != nil, Units: j.Units,
		Part: laminate.PlanPart{Name: j.Part.Name, DrawnFrom: j.Part.DrawnFrom, ZeroDeg: j.Part.ZeroDeg, LoadDeg: j.Part.LoadDeg,
			TrimMM: j.Part.TrimMM, Net: j.Part.Net, Blank: j.Part.Blank, Corners: laminate.NamedCorners(j.Part.Net)},
		Rules: rules(j), Resin: j.Resin, Consumables: j.Consumables, Cores: j.Cores, Measured: j.Measured, Uptakes: j.Uptakes,
		Fibres: j.Fibres, Resins: j.Resins, DXF: j.DXF, Notes: j.Notes,
	}
	for _, f := range j.Fabrics {
		plan.Fabrics = append(plan.Fabrics, laminate.PlanFabric{Name: f.Name, WeightGSM: f.WeightGSM, Fibre: f.Fibre,
			DensityGCM3: f.DensityGCM3, Form: f.Form, FibreVolume: f.FibreVolume, Elastic: f.Elastic, Layers: f.Layers, FaceIs: f.FaceIs, Turn: f.Turn, StaggerMM: f.StaggerMM, PliesBetween: f.PliesBetween})
	}
	for i := range j.Plies {
		plan.Plies = append(plan.Plies, m.ply(i, a.placed.phases[i]))
	}
	for g := range m.groups {
		plan.Rolls = append(plan.Rolls, m.rolls(g, a.placed)...)
	}
	plan.Cost = p.costs(m, a.placed)
	return plan
}

func rules(j *laminate.Job) laminate.PlanRules {
	r := laminate.PlanRules{LayingToleranceMM: j.Rules.LayingToleranceMM, NarrowestMM: j.Rules.NarrowestMM, MaxGapMM: j.Rules.MaxGapMM,
		CuttingGapMM: j.Rules.CuttingGapMM, SparePercent: j.Order.SparePercent, SoldByMM: j.Order.SoldByMM}
	if j.Rules.StraightEnds {
		r.Ends = laminate.StraightEnds
	}
	if j.TableMM > 0 {
		r.TableMM = &j.TableMM
	}
	for _, k := range j.Rules.KeepClear {
		pk := laminate.PlanKeepClear{Region: k.Region}
		for _, a := range k.Angles {
			pk.Angles = append(pk.Angles, a.Degrees())
		}
		r.KeepClear = append(r.KeepClear, pk)
	}
	return r
}

// stripID names the k-th strip of a ply, both counted from 1.
func stripID(ply, k int) string { return fmt.Sprintf("P%02d-S%02d", ply, k) }

// ply writes down a ply's strips and joints in the part frame.
func (m *model) ply(i int, phase int64) laminate.PlanPly {
	p := &m.job.Plies[i]
	d := m.classes[i].Divide(phase)
	out := laminate.PlanPly{Ply: p.Number, Fabric: p.Fabric, AngleDeg: p.Angle().Degrees(), Reversed: p.Reversed(),
		Face: face(p), Outline: p.Outline, Blank: p.Blank}
	back := geometry.PlyFrame(p.Angle()).Inverse()
	for k := range d.Pieces {
		out.Strips = append(out.Strips, laminate.Strip{ID: stripID(p.Number, k+1),
			Shape: region(d.Pieces[k].Rings(), func(q band.Point) orb.Point { return back.Apply(q.MM()) }), WidthMM: geometry.Micrometre(d.Pieces[k].Height()).MM()})
	}
	for _, jt := range band.Joints(d.Pieces, d.Joints) {
		out.Joints = append(out.Joints, laminate.Joint{Kind: laminate.SideJoint,
			From: snapped(back, jt.From), To: snapped(back, jt.To),
			Between: [2]string{stripID(p.Number, jt.Below+1), stripID(p.Number, jt.Above+1)}})
	}
	return out
}

func face(p *laminate.Ply) string {
	if p.FaceDown {
		return laminate.FaceDown
	}
	return laminate.FaceUp
}

func snapped(f geometry.Frame, p band.Point) [2]float64 {
	q := f.Apply(p.MM())
	return [2]float64{geometry.Snap(q[0]), geometry.Snap(q[1])}
}

// region makes a region of a piece's rings, every vertex moved by f.
func region(rings []band.Ring, f func(band.Point) orb.Point) geometry.Region {
	var out geometry.Region
	for i, r := range rings {
		ring := make(orb.Ring, len(r))
		for k, p := range r {
			ring[k] = f(p)
		}
		if i == 0 {
			out.Outer = ring
		} else {
			out.Holes = append(out.Holes, ring)
		}
	}
	return out.Snapped()
}

// rolls writes down the rolls of a group with their pieces in cutting order.
func (m *model) rolls(g int, a *placed) []laminate.PlanRoll {
	gr, l := &m.groups[g], a.layouts[g]
	c := &m.cloths[gr.cloth]
	w := &c.widths[gr.width]
	out := make([]laminate.PlanRoll, len(l.Rolls))
	for k, u := range l.Rolls {
		r := &c.fabric.Rolls[w.rolls[u.Stock]]
		out[k] = laminate.PlanRoll{Roll: r.ID, Copy: u.Copy + 1, Fabric: c.fabric.Name, WidthMM: r.WidthMM,
			UsableWidthMM: geometry.Micrometre(w.usable).MM(), Remnant: r.Remnant, PricePerMetre: r.PricePerMetre, HasPrice: r.HasPrice, UsedLengthMM: geometry.Micrometre(u.Length).MM()}
		if !r.Endless() {
			out[k].StockLengthMM = &r.LengthMM
		}
		for _, at := range u.Cuts {
			out[k].CrossCuts = append(out[k].CrossCuts, geometry.Micrometre(at).MM())
		}
	}
	for n, ref := range a.pieces[g] {
		at := l.Places[n]
		out[at.Roll].Pieces = append(out[at.Roll].Pieces, m.piece(ref, at, a.phases))
	}
	for k := range out {
		order(out[k].Pieces)
	}
	return out
}

// order sorts pieces as they are cut: by where they begin along the roll.
func order(pieces []laminate.Piece) {
	type key struct{ u, v float64 }
	keys := make(map[string]key, len(pieces))
	for i := range pieces {
		b := pieces[i].Shape.Bounds()
		keys[pieces[i].ID] = key{b.Min[0], b.Min[1]}
	}
	slices.SortStableFunc(pieces, func(a, b laminate.Piece) int {
		x, y := keys[a.ID], keys[b.ID]
		return cmp.Or(cmp.Compare(x.u, y.u), cmp.Compare(x.v, y.v), cmp.Compare(a.ID, b.ID))
	})
	for i := range pieces {
		pieces[i].CutOrder = i + 1
	}
}

// piece writes down a piece at its place: the strip in the ply frame, mirrored
// across the roll when the ply lies face down, then turned, then moved.
func (m *model) piece(ref pieceRef, at roll.Place, phases []int64) laminate.Piece {
	p := &m.job.Plies[ref.ply]
	d := m.classes[ref.ply].Divide(phases[ref.ply])
	src := m.cut(d, ref.piece)
	height, length := src.Height(), src.MaxX-src.MinX
	turned := 0
	if at.Way == 1 {
		turned = 180
	}
	shape := region(src.Rings(), func(q band.Point) orb.Point {
		u, v := q.X-src.MinX, q.Y-src.MinY
		if p.FaceDown {
			v = height - v
		}
		if turned == 180 {
			u, v = length-u, height-v
		}
		return band.Point{X: u + at.U, Y: v + at.V}.MM()
	})
	return laminate.Piece{ID: stripID(p.Number, ref.piece+1), Shape: shape, Turned: turned, Mirrored: p.FaceDown}
}
