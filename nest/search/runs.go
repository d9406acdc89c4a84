package search

import "stripwright/geometry/band"

// runs collects sorted lists of ends and merges them into one, by slant; of equal
// slant those collected first come first.
type runs struct {
	ends, spare []*band.End
	begins      []int // of each list
}

func (r *runs) reset() { r.ends, r.begins = r.ends[:0], r.begins[:0] }

// add collects a list that is sorted by slant.
func (r *runs) add(list []band.End) {
	r.begins = append(r.begins, len(r.ends))
	for k := range list {
		r.ends = append(r.ends, &list[k])
	}
}

// merged gives all ends by slant: neighbouring lists are merged until one is left.
func (r *runs) merged() []*band.End {
	for len(r.begins) > 1 {
		r.spare = r.spare[:0]
		n := 0
		for k := 0; k < len(r.begins); k += 2 {
			from, mid, to := r.begins[k], r.begin(k+1), r.begin(k+2)
			r.begins[n] = len(r.spare)
			n++
			r.merge(r.ends[from:mid], r.ends[mid:to])
		}
		r.begins = r.begins[:n]
		r.ends, r.spare = r.spare, r.ends
	}
	return r.ends
}

// begin is where list k begins, or where the last one ends.
func (r *runs) begin(k int) int {
	if k < len(r.begins) {
		return r.begins[k]
	}
	return len(r.ends)
}

// merge adds two sorted lists to the spare room as one.
func (r *runs) merge(a, b []*band.End) {
	for len(a) > 0 && len(b) > 0 {
		if b[0].Slant < a[0].Slant {
			r.spare, b = append(r.spare, b[0]), b[1:]
		} else {
			r.spare, a = append(r.spare, a[0]), a[1:]
		}
	}
	r.spare = append(append(r.spare, a...), b...)
}
