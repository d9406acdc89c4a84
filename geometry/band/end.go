package band

import (
	"math"
	"slices"
)

// Levels is at how many heights the ends of a strip are sampled.
const Levels = 17

// End is one end of a full-width piece as it looks when it faces ahead along
// the roll: how far it stands out at each level beyond its mean, in µm. Two
// ends fit without loss when one is the other turned round.
type End struct {
	Out   [Levels]int32
	Slant float32 // first moment of Out: ends that fit have equal slant
}

// Meet gives the roll length lost where two ends meet, one of them turned to
// face the other, in µm, beyond the mean lengths of the pieces.
func (e *End) Meet(f *End) float32 {
	mid := e.Out[Levels/2] + f.Out[Levels/2]
	a, b, c, d := mid, mid, mid, mid // four at a time, so that none waits for another
	for k := 0; k < Levels/2; k += 2 {
		a = max(a, e.Out[k]+f.Out[Levels-1-k])
		b = max(b, e.Out[k+1]+f.Out[Levels-2-k])
		c = max(c, e.Out[Levels-1-k]+f.Out[k])
		d = max(d, e.Out[Levels-2-k]+f.Out[k+1])
	}
	return float32(max(a, b, c, d))
}

// Ends are the two ends of a full-width piece: Ahead, and Back as if turned to
// face ahead.
type Ends struct{ Ahead, Back End }

// EndsOf samples the ends of a piece and gives its mean length between them.
func EndsOf(p *Piece) (e Ends, mean float64) {
	var l, r [Levels]float64
	for k := range l {
		l[k], r[k] = float64(p.MaxX), float64(p.MinX)
	}
	step := float64(p.Height()) / Levels
	a := p.Outer[len(p.Outer)-1]
	for _, b := range p.Outer {
		foot, top := a, b
		a = b
		if foot.Y == top.Y {
			continue
		}
		if foot.Y > top.Y {
			foot, top = top, foot
		}
		slope := float64(top.X-foot.X) / float64(top.Y-foot.Y)
		for k := max(0, int(float64(foot.Y-p.MinY)/step-0.5)); k < Levels; k++ {
			y := float64(p.MinY) + float64((float64(k)+0.5)*step)
			if y < float64(foot.Y) {
				continue
			}
			if y > float64(top.Y) {
				break
			}
			x := float64(foot.X) + float64((y-float64(foot.Y))*slope)
			l[k], r[k] = min(l[k], x), max(r[k], x)
		}
	}
	var sumL, sumR float64
	for k := range l {
		sumL, sumR = sumL+l[k], sumR+r[k]
	}
	meanL, meanR := sumL/Levels, sumR/Levels
	for k := range l {
		e.Ahead.Out[k] = int32(math.Round(r[k] - meanR))
		e.Back.Out[Levels-1-k] = int32(math.Round(meanL - l[k]))
	}
	e.Ahead.weigh()
	e.Back.weigh()
	return e, meanR - meanL
}

func (e *End) weigh() {
	sum := int64(0)
	for k, x := range e.Out {
		sum += int64(x) * int64(k-Levels/2)
	}
	e.Slant = float32(sum)
}

// Mirrored gives the ends of the piece mirrored across the roll.
func (e Ends) Mirrored() Ends {
	slices.Reverse(e.Ahead.Out[:])
	slices.Reverse(e.Back.Out[:])
	e.Ahead.Slant, e.Back.Slant = -e.Ahead.Slant, -e.Back.Slant
	return e
}

// Most gives how far the end stands out at most, in µm.
func (e *End) Most() float32 { return float32(slices.Max(e.Out[:])) }
