package nest

import (
	"stripwright/geometry"
	"stripwright/geometry/grow"
	"stripwright/laminate"
	"stripwright/nest/layout"
	"stripwright/nest/roll"
	"stripwright/nest/search"
	"stripwright/nest/stagger"
)

// model is a job with widths chosen, ready for one goroutine: every ply's class
// and the search problem over them.
type model struct {
	job     *laminate.Job
	cloths  []cloth
	choice  choice
	sketch  bool            // pieces of lean outlines do
	classes []*layout.Class // by ply
	groups  []group
	problem *search.Problem
	ready   map[piecesKey][]roll.Piece
	shapes  int // in ready
	memory  roll.Memory
	shaper  roll.Shaper
	stop    func() bool
}

// group is the plies of one cloth and width: they share rolls.
type group struct {
	cloth, width int
	plies        []int
}

// baseKey tells blanks apart: by outline and angle.
type baseKey struct {
	outline string
	angle   geometry.Angle
}

func keyOf(p *laminate.Ply) baseKey { return baseKey{p.Outline, p.Angle()} }

// classKey tells plies apart that need a class of their own.
type classKey struct {
	base   baseKey
	usable int64
}

// clearZones gives the keep-clear regions grown by the laying tolerance.
func clearZones(j *laminate.Job) ([]laminate.KeepClear, error) {
	out := make([]laminate.KeepClear, len(j.Rules.KeepClear))
	for i, k := range j.Rules.KeepClear {
		out[i] = k
		if j.Rules.LayingToleranceMM > 0 {
			r, err := grow.Region(k.Region, j.Rules.LayingToleranceMM)
			if err != nil {
				return nil, err
			}
			out[i].Region = r
		}
	}
	return out, nil
}

// newModel prepares the classes and conflicts of a choice.
func newModel(j *laminate.Job, cloths []cloth, bases map[baseKey]*layout.Base, c choice) *model {
	m := &model{job: j, cloths: cloths, choice: c, classes: make([]*layout.Class, len(j.Plies)),
		ready: make(map[piecesKey][]roll.Piece)}
	m.shaper.Memory = &m.memory
	known := make(map[classKey]*layout.Class)
	plies := make([]stagger.Ply, len(j.Plies))
	m.problem = &search.Problem{Group: make([]int, len(j.Plies)), Down: make([]bool, len(j.Plies)), Gap: int64(geometry.Micrometres(j.Rules.CuttingGapMM))}
	for k := range cloths {
		for _, i := range cloths[k].plies {
			m.classes[i] = m.class(known, bases, i, cloths[k].widths[c[i]].usable)
			plies[i] = m.staggerPly(i, cloths[k].fabric)
			m.problem.Group[i] = m.group(k, c[i], i)
			m.problem.Down[i] = j.Plies[i].FaceDown
		}
	}
	m.problem.Web = stagger.NewWeb(plies)
	return m
}

// group finds or begins the group of a cloth and width and adds the ply.
func (m *model) group(cloth, width, ply int) int {
	for g := range m.groups {
		if m.groups[g].cloth == cloth && m.groups[g].width == width {
			m.groups[g].plies = append(m.groups[g].plies, ply)
			return g
		}
	}
	m.groups = append(m.groups, group{cloth, width, []int{ply}})
	m.problem.Weight = append(m.problem.Weight, m.cloths[cloth].weight(width))
	m.problem.Turn = append(m.problem.Turn, m.cloths[cloth].fabric.Turn)
	return len(m.groups) - 1
}

func (m *model) class(known map[classKey]*layout.Class, bases map[baseKey]*layout.Base, i int, usable int64) *layout.Class {
	base := keyOf(&m.job.Plies[i])
	key := classKey{base, usable}
	c, ok := known[key]
	if !ok {
		c = bases[base].Class(usable, int64(geometry.Micrometres(m.job.Rules.NarrowestMM)))
		c.Straight = m.job.Rules.StraightEnds
		known[key] = c
	}
	return c
}

// basesOf prepares every blank of the job at every angle it is laid at, once
// for all searches.
func basesOf(j *laminate.Job, workers int) (map[baseKey]*layout.Base, error) {
	zones, err := clearZones(j)
	if err != nil {
		return nil, err
	}
	var first []int // ply of each base
	out := make(map[baseKey]*layout.Base)
	for i := range j.Plies {
		key := keyOf(&j.Plies[i])
		if _, ok := out[key]; !ok {
			out[key] = nil
			first = append(first, i)
		}
	}
	bases := make([]*layout.Base, len(first))
	inParallel(workers, len(first), func(k int) {
		p := &j.Plies[first[k]]
		var clear []geometry.Region
		for _, z := range zones {
			if concerns(z, p.Angle()) {
				clear = append(clear, z.Region)
			}
		}
		bases[k] = layout.NewBase(p.Angle(), p.Blank, j.Part.Net, clear)
	})
	for k, i := range first {
		out[keyOf(&j.Plies[i])] = bases[k]
	}
	return out, nil
}

// concerns says whether a keep-clear region holds for plies at an angle.
func concerns(z laminate.KeepClear, a geometry.Angle) bool {
	if z.Angles == nil {
		return true
	}
	for _, b := range z.Angles {
		if a == b {
			return true
		}
	}
	return false
}

// staggerPly sets the stagger to plan for: what is asked plus twice the laying
// tolerance.
func (m *model) staggerPly(i int, f *laminate.Fabric) stagger.Ply {
	p := &m.job.Plies[i]
	return stagger.Ply{
		Number:  p.Number,
		Class:   m.classes[i],
		Stagger: int64(geometry.Micrometres(f.StaggerMM + 2*m.job.Rules.LayingToleranceMM)),
		Between: f.PliesBetween,
		Covers:  p.Outline == "",
	}
}
