package main

import (
	"fmt"
	"path/filepath"

	"github.com/paulmach/orb"
	"github.com/spf13/pflag"

	"stripwright/geometry"
	"stripwright/geometry/drawing"
	"stripwright/geometry/grow"
	"stripwright/geometry/length"
	"stripwright/output/outline"
)

// clearOptions say what of the drawing is to be kept clear of joints, in the
// words of keep_clear in a job file.
type clearOptions struct {
	layers    []string
	holesUpTo float64
	grow      float64
}

func (o *clearOptions) flags(f *pflag.FlagSet) {
	f.Var(many{&o.layers}, "keep-clear-layer", "show what this layer or group keeps clear of joints (may be repeated)")
	f.Var(onceLength(&o.holesUpTo), "keep-clear-holes-up-to", "show the holes up to this size kept clear (bare number: mm)")
	f.Var(onceLength(&o.grow), "keep-clear-grow", "grow what is kept clear by this (bare number: mm)")
}

// check refuses a distance to grow nothing by.
func (o clearOptions) check() error {
	if o.grow > 0 && len(o.layers) == 0 && o.holesUpTo == 0 {
		return mistake("stripwright outline: --keep-clear-grow alone: name what is kept clear with --keep-clear-layer or --keep-clear-holes-up-to")
	}
	return nil
}

// keptClear finds what is kept clear, layer by layer and then the holes; what
// cannot be found is a mistake.
func keptClear(o outlineOptions, read drawing.Options, data []byte, d drawing.Drawing) (found []outline.Clear, wrong mistakes) {
	if len(d.Problems) > 0 {
		return nil, nil
	}
	add := func(from string, regions []geometry.Region) {
		kept, err := grown(regions, o.clear.grow)
		if err != nil {
			wrong = append(wrong, fmt.Sprintf("%s: %s cannot be grown: %v", o.file, from, err))
			return
		}
		found = append(found, outline.Clear{From: from, GrowMM: o.clear.grow, Found: regions, Kept: kept})
	}
	for _, layer := range o.clear.layers {
		on := drawing.OnLayers(filepath.Base(o.file), data, read, []string{layer})
		for _, p := range on.Problems {
			wrong = append(wrong, "keep clear: "+problemLine(o.file, p))
		}
		if len(on.Problems) == 0 {
			add("layer "+layer, on.Regions)
		}
	}
	if o.clear.holesUpTo > 0 {
		holes, err := holesUpTo(o, d)
		if err != nil {
			return found, append(wrong, err.Error())
		}
		add("holes up to "+length.MM(o.clear.holesUpTo), holes)
	}
	return found, wrong
}

// grown gives regions grown by a distance; by none they are as they were.
func grown(regions []geometry.Region, by float64) ([]geometry.Region, error) {
	if by == 0 {
		return regions, nil
	}
	var out []geometry.Region
	for _, g := range regions {
		more, err := grow.Region(g, by)
		if err != nil {
			return nil, err
		}
		out = append(out, more)
	}
	return out, nil
}

// holesUpTo gives the small holes of all regions; none is a mistake, as in a job.
func holesUpTo(o outlineOptions, d drawing.Drawing) (all []geometry.Region, err error) {
	least := -1.0
	for _, g := range d.Regions {
		holes, smallest := drawing.HolesUpTo(g, o.clear.holesUpTo)
		all = append(all, holes...)
		if len(g.Holes) > 0 && (least < 0 || smallest < least) {
			least = smallest
		}
	}
	switch {
	case len(all) > 0:
		return all, nil
	case least < 0:
		return nil, mistake("%s: no hole is up to %s: the part has no holes", o.file, length.MM(o.clear.holesUpTo))
	}
	return nil, mistake("%s: no hole is up to %s: the smallest measures %s", o.file, length.MM(o.clear.holesUpTo), length.MM(least))
}

// clearJSON is one region kept clear, for machines.
type clearJSON struct {
	From   string          `json:"from"`
	GrowMM float64         `json:"grow_mm"`
	Found  geometry.Region `json:"found"`
	Kept   geometry.Region `json:"kept_clear"`
}

func clearsJSON(clears []outline.Clear) []clearJSON {
	out := []clearJSON{}
	for _, c := range clears {
		for i := range c.Found {
			out = append(out, clearJSON{c.From, c.GrowMM, listed(c.Found[i]), listed(c.Kept[i])})
		}
	}
	return out
}

// listed gives a region whose list of holes is not null.
func listed(g geometry.Region) geometry.Region {
	return geometry.Region{Outer: g.Outer, Holes: append([]orb.Ring{}, g.Holes...)}
}
