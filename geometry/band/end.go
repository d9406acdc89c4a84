package band

import (
	"slices"
)

// Levels is at how many heights the ends of a strip are sampled.
const Levels = 17

// End is one end of a full-width piece as it looks when it faces ahead along
// the roll: how far it stands out at each level beyond its mean, in µm. Two
// ends fit without loss when one is the other turned round.
type End struct {
	Out   [Levels]float32
	Slant float32 // first moment of Out: ends that fit have equal slant
}

// Meet gives the roll length lost where two ends meet, one of them turned to
// face the other, in µm, beyond the mean lengths of the pieces.
func (e *End) Meet(f *End) float32 {
	most := e.Out[0] + f.Out[Levels-1]
	for k := 1; k < Levels; k++ {
		most = max(most, e.Out[k]+f.Out[Levels-1-k])
	}
	return most
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
		e.Ahead.Out[k] = float32(r[k] - meanR)
		e.Back.Out[Levels-1-k] = float32(meanL - l[k])
	}
	e.Ahead.weigh()
	e.Back.weigh()
	return e, meanR - meanL
}

func (e *End) weigh() {
	e.Slant = 0
	for k, x := range e.Out {
		e.Slant += float32(x * float32(k-Levels/2))
	}
}

// Mirrored gives the ends of the piece mirrored across the roll.
func (e Ends) Mirrored() Ends {
	slices.Reverse(e.Ahead.Out[:])
	slices.Reverse(e.Back.Out[:])
	e.Ahead.Slant, e.Back.Slant = -e.Ahead.Slant, -e.Back.Slant
	return e
}

// Most gives how far the end stands out at most, in µm.
func (e *End) Most() float32 { return slices.Max(e.Out[:]) }
