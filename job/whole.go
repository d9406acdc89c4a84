package job

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"stripwright/geometry/length"
	"stripwright/laminate"
)

// whole reads the blocks of the file in the order in which they need each
// other: units first, the part before what lies on it, fabrics before plies.
func (r *reading) whole(root *yaml.Node) {
	r.strict(root)
	b, ok := r.block(root, root, "the job", topKeys)
	if !ok {
		return
	}
	r.header(b)
	r.part(b)
	r.patches(b)
	r.kinds(b)
	r.resin(b)
	r.fabrics(b)
	r.drawnSize()
	r.coreKinds(b)
	r.schedule(b)
	r.joints(b)
	r.buying(b)
	r.dxf(b)
	r.consumables(b)
	r.panel(b)
	r.sense()
}

// header reads the title and the unit of bare numbers.
func (r *reading) header(b block) {
	if n := b.value("units"); n != nil {
		if u, ok := number(r, n, "units", length.ParseUnit); ok {
			r.units = u
		}
	} else if !b.has("units") {
		r.assume(nil, "units", "units mm for bare numbers")
	}
	r.job.Units = string(r.units)
	if n := b.value("title"); n != nil {
		r.job.Title, _ = r.name(n, "title", mostTitle)
	} else if !b.has("title") {
		r.job.Title = strings.TrimSuffix(strings.TrimSuffix(r.job.File.Name, ".yaml"), ".yml")
		r.assume(nil, "title", "the file's name as the title")
	}
}

// buying reads how cloth is bought, the cutting table and the search.
func (r *reading) buying(b block) {
	o, _ := r.optional(b, "order", orderKeys)
	if n := o.value("spare"); n != nil {
		if v, ok := number(r, n, "spare", length.ParsePercent); ok && (v < 0 || v > 200) {
			r.refuse(n, "spare", "check the number", "spare %s is not between 0 and 200 %%", n.Value)
		} else {
			r.job.Order.SparePercent = v
		}
	} else if !o.has("spare") {
		r.assume(o.at, "spare", "no spare cloth: spare 0 %%")
	}
	if n := o.value("sold_by"); n != nil {
		r.job.Order.SoldByMM, _ = r.lengthIn(n, "sold_by", limits{1, 1e6})
	} else if !o.has("sold_by") {
		r.assume(o.at, "sold_by", "that cloth is sold by any length")
	}
	if n := b.value("table"); n != nil {
		r.job.TableMM, _ = r.lengthIn(n, "table", limits{200, 1e6})
	}
	s, _ := r.optional(b, "search", searchKeys)
	r.search(s)
}

func (r *reading) search(s block) {
	r.job.Search = laminate.Search{Effort: laminate.Normal, Seed: 1}
	if n := s.value("effort"); n != nil {
		r.job.Search.Effort, _ = r.choice(n, "effort", laminate.Quick, laminate.Normal, laminate.Thorough)
	} else if !s.has("effort") {
		r.assume(s.at, "effort", "effort normal")
	}
	if n := s.value("seed"); n != nil {
		seed, _ := r.count(n, "seed", 0, 1e15)
		r.job.Search.Seed = int64(seed)
	} else if !s.has("seed") {
		r.assume(s.at, "seed", "seed 1")
	}
}

// optional reads a block that may be left out; it is then empty.
func (r *reading) optional(b block, key string, set keySet) (block, bool) {
	if n := b.value(key); n != nil {
		return r.block(n, b.keys[key], key, set)
	}
	return block{r: r, what: key, at: b.keys[key]}, false
}

// assume notes what is filled in for something the job leaves out.
func (r *reading) assume(at *yaml.Node, rule, format string, args ...any) {
	r.note(at, rule, "assumed "+format, args...)
}

// note adds a note at a place of the file; nil: the whole file.
func (r *reading) note(at *yaml.Node, rule, format string, args ...any) {
	where := r.job.File.Name
	if at != nil && at.Line > 0 {
		where = fmt.Sprintf("%s:%d", where, at.Line)
	}
	r.notes = append(r.notes, laminate.Note{Rule: rule, Where: where, Text: fmt.Sprintf(format, args...)})
}
