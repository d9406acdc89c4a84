package stagger

import (
	"slices"

	"stripwright/nest/layout"
)

// lattice lists the allowed phases of ply i that lie whole staggers, or even
// slots, from an anchor.
func (w *Web) lattice(i, k, clique int, anchor int64) []int64 {
	c := w.Plies[i].Class
	var out []int64
	add := func(y int64) {
		if y = c.Phase(y); !slices.Contains(out, y) && c.FaultAt(y) == layout.None {
			out = append(out, y)
		}
	}
	d := w.widest(i)
	for m := range clique {
		add(anchor + slot(k+m, clique, c.Width))
	}
	for m := range clique {
		add(anchor + int64((k+m)%clique)*d)
	}
	return out
}

// anchors lists heights that joints of a ply may best be counted from.
func (w *Web) anchors(i int) []int64 {
	const most = 40
	c := w.Plies[i].Class
	out := append([]int64{c.Blank.MinY, c.Blank.MaxY}, c.Barriers()...)
	return out[:min(len(out), most)]
}

// widest gives the largest stagger that ply i must keep.
func (w *Web) widest(i int) int64 {
	d := w.scaled(w.Plies[i].Stagger)
	for _, x := range w.Conflicts[i] {
		d = max(d, w.scaled(x.Stagger))
	}
	return d
}

// Candidates lists allowed phases for ply i, the k-th of its group: even slots
// from the lowest edge of the blank first, then whole staggers from the edges
// and from the borders of what is not allowed. With phases of one comb these
// are enough: a clear set can be pushed down until every phase stands at a
// border or a stagger above another.
func (w *Web) Candidates(i, k, clique int) []int64 {
	c := w.Plies[i].Class
	d := w.widest(i)
	var out []int64
	seen := make(map[int64]bool)
	add := func(y int64) {
		if y = c.Phase(y); !seen[y] {
			seen[y] = true
			if c.FaultAt(y) == layout.None {
				out = append(out, y)
			}
		}
	}
	for m := range clique {
		add(c.Blank.MinY + slot(k+m, clique, c.Width))
	}
	for m := 0; m <= clique && m <= 12; m++ {
		for _, a := range w.anchors(i) {
			add(a + int64(m)*d)
			add(a - int64(m)*d)
		}
	}
	for y := int64(0); len(out) == 0 && y < c.Width; y += max(scan, c.Width/2000) {
		add(y)
	}
	return out
}

// scan is the step in µm at which phases are tried when no candidate is allowed.
const scan = 500

// slot gives the k-th of n even places on a comb, rounded so that neighbours
// are never nearer than the pitch over n, rounded down.
func slot(k, n int, pitch int64) int64 { return int64(k%n) * pitch / int64(n) }

// Alone says whether ply i has an allowed phase at all.
func (w *Web) Alone(i int) bool { return len(w.Candidates(i, 0, 1)) > 0 }
