package search

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"stripwright/nest/layout"
)

// Table is what states are laid on for their true cost. It remembers how the
// pieces of the state kept last were laid, and lays the next one alike.
type Table interface {
	// Lay lays the pieces at some phases and gives the cost; ok is false where
	// the stock does not hold them or the cost is above most.
	Lay(phases []int64, most float64, rng *rand.Rand) (cost float64, ok bool)
	// Vary lays the pieces of the state kept last a little otherwise; slack is
	// what a change may lose at first sight.
	Vary(most, slack float64, rng *rand.Rand) (cost float64, ok bool)
	// Keep keeps what was laid last.
	Keep()
	// Work is how much has been done on the table, counted so that it is the same
	// on every run and grows with the time it takes.
	Work() int64
}

// What a climb does beside its table, in the table's units: shares of processor
// time, measured once.
const (
	workTry    = 80 // to draw a move and judge it
	workEnd    = 10 // for each end of a full-width piece
	workVertex = 8  // for each vertex of a blank that is divided
)

// Shares of what a climb tries, in percent, and how it goes about it.
const (
	varied = 40    // pieces laid otherwise at the same phases
	nudged = 8     // of the rest, a ply moved by a little
	cooled = 0.005 // heat at the end of a climb to that at its begin
)

// Climb looks for states of less true cost, by annealing: moves are drawn as in
// Run, those whose estimate is not hopeless are laid on the table, as are other
// ways to lay the pieces. hot is the heat at the begin, as a share of the cost;
// work bounds what is done. The table keeps the start at the least; a start that
// the stock does not hold is left at once. doubt is by how much an estimate may
// rise and still be worth laying, as a share of it.
func Climb(ctx context.Context, p *Problem, start []int64, work int64, hot, doubt float64, seed uint64, t Table) {
	c := climber{doubt: doubt, walker: newWalker(p, start), table: t, rng: rand.New(rand.NewPCG(seed, 0xc11b))}
	for i := range c.phases {
		if class := c.class(i); !slices.Contains(c.classes, class) {
			c.classes = append(c.classes, class)
		}
	}
	begun := c.work()
	cost, ok := t.Lay(c.phases, math.Inf(1), c.rng)
	if !ok {
		return
	}
	c.keep(cost)
	hot *= cost
	for k := 0; k%16 > 0 || ctx.Err() == nil; k++ {
		done := float64(c.work()-begun) / float64(work)
		if done >= 1 {
			break
		}
		heat := hot * math.Pow(cooled, done)
		most := c.now + float64(heat*c.rng.ExpFloat64())
		if c.rng.IntN(100) < varied {
			c.vary(most, heat)
		} else {
			c.move(most)
		}
	}
}

// climber is a climb under way.
type climber struct {
	*walker
	table   Table
	rng     *rand.Rand
	now     float64 // true cost
	doubt   float64
	classes []*layout.Class // of all plies, each once
	tried   int64           // work beside the table and the dividing of blanks
	changes []change
	old     []int64
}

// work is what has been done so far.
func (c *climber) work() int64 {
	sum := c.tried + c.table.Work()
	for _, class := range c.classes {
		sum += workVertex * class.Work()
	}
	return sum
}

// keep takes what was laid last.
func (c *climber) keep(cost float64) {
	c.now = cost
	c.table.Keep()
}

// vary lays the pieces otherwise.
func (c *climber) vary(most, heat float64) {
	c.tried += workTry
	if cost, ok := c.table.Vary(most, heat*c.rng.ExpFloat64(), c.rng); ok {
		c.keep(cost)
	}
}

// move tries other phases.
func (c *climber) move(most float64) {
	before := c.total()
	c.tried += workTry + int64(workEnd*(len(c.ahead.ends)+len(c.back.ends)))
	if c.rng.IntN(100) < nudged {
		i := c.rng.IntN(len(c.phases))
		c.changes = append(c.changes[:0], change{i, c.nudge(i, c.rng)})
	} else {
		c.changes = c.propose(c.rng, c.changes[:0])
	}
	estimate, ok := c.try(c.changes, &c.old)
	if !ok {
		return
	}
	if estimate <= before*(1+float64(c.doubt*c.rng.ExpFloat64())) {
		if cost, ok := c.table.Lay(c.phases, most, c.rng); ok {
			c.keep(cost)
			return
		}
	}
	c.undo(c.changes, c.old)
	c.refresh(c.changes)
}
