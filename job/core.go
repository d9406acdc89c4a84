package job

import (
	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/laminate"
)

// namedCore is a core as it is bought, before it lies anywhere.
type namedCore struct {
	core laminate.Core
	at   *yaml.Node
	used bool
}

// coreKinds reads the sandwich cores that the schedule may lay.
func (r *reading) coreKinds(top block) {
	r.cores = map[string]namedCore{}
	n := top.value("cores")
	if n == nil {
		return
	}
	for _, named := range r.named(n, "cores", "core") {
		c := namedCore{at: named.key}
		if b, ok := r.block(named.value, named.key, "core "+named.key.Value, coreKeys); ok {
			c.core = r.coreKind(b, named.key.Value)
		}
		r.cores[named.key.Value] = c
		r.coreNodes = append(r.coreNodes, named.key)
	}
}

func (r *reading) coreKind(b block, name string) laminate.Core {
	c := laminate.Core{Name: name}
	if n := b.need("thickness", "write its thickness: thickness: 15"); n != nil {
		mm, _ := r.lengthIn(n, "thickness", limits{0.5, 300})
		c.ThicknessMM = geometry.Snap(mm)
	}
	if n := b.need("density", "write its density from the data sheet: density: 80 kg/m3"); n != nil {
		v, _ := r.measured(n, "density", coreDensities)
		c.DensityKGM3 = toNano(float64(v * 1000))
	}
	c.UptakeGSM = r.figure(b, "uptake", r.arealWeights())
	if !b.has("uptake") && r.job.Resin != nil {
		r.note(b.at, "uptake", "no uptake is written for core %s: the resin that its faces, cuts and grooves take up is not in the sum; write uptake: in g/m2 of each face", name)
	}
	if n := b.value("sheet"); n != nil {
		if size, ok := r.size(n, "sheet"); ok && (min(size[0], size[1]) < 50 || max(size[0], size[1]) > 6000) {
			r.refuse(n, "sheet", "check the numbers and their unit", "sheets from 50 mm to 6000 mm in a side are taken")
		} else {
			c.SheetMM = [2]float64{geometry.Snap(size[0]), geometry.Snap(size[1])}
		}
	}
	if n := b.value("on_hand"); n != nil {
		if c.OnHand, _ = r.count(n, "on_hand", 0, 10000); !b.has("sheet") {
			r.refuse(n, "on_hand", "write sheet: [1200, 600], the size of a sheet", "on_hand counts sheets, and core %s has no size of sheet", name)
		}
	}
	if n := b.value("price"); n != nil {
		if c.PricePerSheet, c.HasPrice = r.measured(n, "price", sheetPrices); !b.has("sheet") {
			r.refuse(n, "price", "write sheet: [1200, 600], the size that is sold", "the price is for a sheet, and core %s has no size of sheet", name)
		}
	}
	return c
}

// corePly lays a core at the place of the schedule where it stands: it is no
// ply, and is counted as none.
func (r *reading) corePly(b block) {
	for _, key := range plyKeys.known {
		if at := b.keys[key]; at != nil && key != "core" && key != "outline" {
			r.refuse(at, key, "take it out, or write the ply in an entry of its own", "a core has no %s", key)
		}
	}
	n := b.value("core")
	if n == nil {
		return
	}
	name, ok := r.name(n, "core", mostName)
	if !ok {
		return
	}
	c, known := r.cores[name]
	r.known(n, "core", name, r.coreNames(), known)
	if !known {
		return
	}
	c.used = true
	r.cores[name] = c
	laid := c.core
	place := laminate.Ply{Blank: r.job.Part.Blank}
	if n := b.value("outline"); n != nil {
		r.plyOutline(n, &place)
	}
	laid.AfterPly, laid.Outline, laid.Blank = len(r.job.Plies), place.Outline, place.Blank
	r.job.Cores = append(r.job.Cores, laid)
}

func (r *reading) coreNames() []string {
	var names []string
	for _, n := range r.coreNodes {
		names = append(names, n.Value)
	}
	return names
}

// coreSense notes cores that lie nowhere, or on the tool or on top of all.
func (r *reading) coreSense() {
	for _, n := range r.coreNodes {
		if !r.cores[n.Value].used {
			r.note(n, "cores", "core %s is not in the schedule", n.Value)
		}
	}
	for _, c := range r.job.Cores {
		if c.AfterPly == 0 || c.AfterPly == len(r.job.Plies) {
			r.note(r.cores[c.Name].at, "cores", "core %s has no ply on one side of it", c.Name)
		}
	}
}
