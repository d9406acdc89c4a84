package nest

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"stripwright/geometry"
	"stripwright/nest/layout"
	"stripwright/nest/roll"
)

// refuse says why no set of phases was found.
func (p *planner) refuse(m *model, exhausted bool) error {
	for i := range m.classes {
		if r := p.nowhere(m, i); r != nil {
			return r
		}
	}
	return p.tooTight(m, exhausted)
}

// nowhere refuses a ply that has no allowed phase even alone.
func (p *planner) nowhere(m *model, i int) *Refusal {
	if m.problem.Web.Alone(i) {
		return nil
	}
	c := m.classes[i]
	width := geometry.Micrometre(c.Width)
	r := &Refusal{Rule: RuleNarrowest, Plies: []int{p.job.Plies[i].Number}}
	clear, wide := alone(c)
	if !clear || wide {
		r.Rule = RuleKeepClear
		r.Text = fmt.Sprintf("ply %d: with strips of %s mm a joint always runs through a keep-clear region", p.job.Plies[i].Number, mm(width))
		if clear {
			r.Text += fmt.Sprintf(", or leaves a piece narrower than %s mm", mm(geometry.Micrometres(p.job.Rules.NarrowestMM)))
		}
		r.Cures = []string{"a wider roll", "smaller keep-clear regions, or only for the angles that need them"}
		return r
	}
	r.Text = fmt.Sprintf("ply %d: strips of %s mm always leave a piece narrower than %s mm", p.job.Plies[i].Number, mm(width), mm(geometry.Micrometres(p.job.Rules.NarrowestMM)))
	r.Cures = []string{"a smaller narrowest strip", "another roll width"}
	return r
}

// alone says whether some phase keeps the regions without joints clear, and
// whether some phase leaves no piece too narrow, each rule by itself.
func alone(c *layout.Class) (clear, wide bool) {
	for y := int64(0); y < c.Width && !(clear && wide); y += max(500, c.Width/2000) {
		clear = clear || c.Comb(y).Clear
		wide = wide || c.WideEnough(y)
	}
	return clear, wide
}

// widths lists the usable widths of some plies.
func widths(m *model, plies []int) string {
	var list []int64
	for _, i := range plies {
		list = append(list, m.classes[i].Width)
	}
	slices.Sort(list)
	var words []string
	for _, w := range slices.Compact(list) {
		words = append(words, mm(geometry.Micrometre(w)))
	}
	return strings.Join(words, " and ")
}

// numbers lists ply numbers, runs of three or more as first–last.
func numbers(list []int) string {
	var words []string
	for i := 0; i < len(list); {
		j := i
		for j+1 < len(list) && list[j+1] == list[j]+1 {
			j++
		}
		if j-i >= 2 {
			words = append(words, fmt.Sprintf("%d–%d", list[i], list[j]))
		} else {
			for k := i; k <= j; k++ {
				words = append(words, strconv.Itoa(list[k]))
			}
		}
		i = j + 1
	}
	return strings.Join(words, ", ")
}

// mm prints a length in mm with as many decimals as it has, at most three.
func mm(m geometry.Micrometre) string { return strconv.FormatFloat(m.MM(), 'f', -1, 64) }

// shortOf words a shortage of the stock of a group: what is needed, what is
// there, which pieces fit, and what to buy.
func (p *planner) shortOf(m *model, g int, phases []int64, err error) error {
	var short *roll.Shortage
	if !errors.As(err, &short) {
		return err
	}
	gr := &m.groups[g]
	c := &m.cloths[gr.cloth]
	task, refs := m.task(g, phases)
	r := &Refusal{Rule: RuleStock}
	for _, k := range short.Unplaced {
		if n := p.job.Plies[refs[k].ply].Number; !slices.Contains(r.Plies, n) {
			r.Plies = append(r.Plies, n)
		}
	}
	slices.Sort(r.Plies)
	longest := geometry.Micrometre(task.Longest())
	name := fmt.Sprintf("%s, usable width %s mm", c.fabric.Name, mm(geometry.Micrometre(task.Width)))
	if table := geometry.Micrometre(task.Table); table > 0 && longest > table {
		r.Rule = RuleTable
		r.Text = fmt.Sprintf("%s: a strip of %s mm is longer than the table of %s mm", name, mm(longest), mm(table))
		r.Cures = []string{"a longer table", "another direction for the ply"}
		return r
	}
	have, longestRoll := task.Held()
	if longest > geometry.Micrometre(longestRoll) {
		r.Text = fmt.Sprintf("%s: a strip of %s mm is longer than the longest roll of %s mm", name, mm(longest), mm(geometry.Micrometre(longestRoll)))
		r.Cures = []string{fmt.Sprintf("buy a roll of %s mm or longer", mm(longest))}
		return r
	}
	need, buy := task.Wanted(p.budget.quick, uint64(p.seed))
	fit := len(refs) - len(short.Unplaced)
	r.Text = fmt.Sprintf("%s: %s mm of roll are needed, %s mm are in stock, %d of %d strips fit", name, mm(geometry.Micrometre(need)), mm(geometry.Micrometre(have)), fit, len(refs))
	if need > have {
		r.Text += fmt.Sprintf(": %s mm are missing", mm(geometry.Micrometre(need-have)))
	}
	r.Cures = []string{fmt.Sprintf("buy a roll of %s mm or longer of this width", mm(geometry.Micrometre(buy)))}
	return r
}
