package rim

import (
	"math"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/sheet"
)

// Measures in mm.
const (
	longest  = 250.0 // of a piece along the line
	shortest = 200.0 // but for the last of a stretch
	tail     = 12.0  // glued under the next piece, or left over at a corner
	together = 0.05  // ticks so near are one

	rulerHigh = 6.2 // room of the running lengths under the line
	laneHigh  = 3.8
	nameHigh  = 7.0
)

// tick is one mark with the joints that lie there.
type tick struct {
	along float64
	words string
	lane  int
}

// piece is a strip of paper: a part of a stretch.
type piece struct {
	stretch  layup.Stretch
	from, to float64
	number   int
	of       int
	ticks    []tick
	lanes    int
}

// pieces cuts a stretch into strips, where no tick is near if that can be.
func pieces(p laminate.Plan, l layup.Line, s layup.Stretch) []piece {
	ticks := joined(l.Ticks(p, s))
	var out []piece
	for from := 0.0; from < s.Long-0.0005; {
		to := cut(ticks, from, s.Long)
		one := piece{stretch: s, from: from, to: to, number: len(out) + 1}
		for _, t := range ticks {
			if t.along >= from && (t.along < to || to == s.Long) {
				one.ticks = append(one.ticks, t)
			}
		}
		one.lanes = share(one.ticks)
		out = append(out, one)
		from = to
	}
	for i := range out {
		out[i].of = len(out)
	}
	return out
}

// cut chooses where a strip ends: at its longest, or earlier where the words of a
// tick would not fit before the splice.
func cut(ticks []tick, from, long float64) float64 {
	left := long - from
	if left <= longest {
		return long
	}
	most := longest
	if left < 2*shortest { // no stub of a last piece
		most = math.Ceil(left/20) * 10
	}
	for to := from + most; to >= from+math.Min(shortest, most-50); to -= 10 {
		clear := true
		for _, t := range ticks {
			clear = clear && (t.along < to-t.wide()-2 || t.along > to+1)
		}
		if clear {
			return to
		}
	}
	return from + most
}

func (t tick) text() sheet.Text { return sheet.Text{Height: 2.6, Bold: true, Words: t.words} }

func (t tick) wide() float64 { return t.text().Width() }

// joined makes one tick of those at one place.
func joined(ticks []layup.LineTick) []tick {
	var out []tick
	for _, t := range ticks {
		words := strconv.Itoa(t.Ply) + " J" + strconv.Itoa(t.Joint)
		if n := len(out); n > 0 && t.AlongMM-out[n-1].along < together {
			out[n-1].words = strings.Join([]string{out[n-1].words, words}, ", ")
			continue
		}
		out = append(out, tick{along: t.AlongMM, words: words})
	}
	return out
}

// share gives each tick a lane for its words, from the right: the words of one
// that stands farther left go under those that they would run into, so that no
// tick crosses words. It gives how many lanes there are.
func share(ticks []tick) int {
	var start []float64 // of the words in each lane
	for i := len(ticks) - 1; i >= 0; i-- {
		t := &ticks[i]
		end := t.along + t.wide() + 1.6
		for t.lane = 0; t.lane < len(start) && start[t.lane] < end; t.lane++ {
		}
		if t.lane == len(start) {
			start = append(start, 0)
		}
		// All lanes above end here too: the tick passes through them.
		for k := 0; k <= t.lane; k++ {
			start[k] = math.Min(nonZero(start[k]), t.along-0.8)
		}
	}
	return max(1, len(start))
}

func nonZero(v float64) float64 {
	if v == 0 {
		return math.Inf(1)
	}
	return v
}

func (p piece) high() float64 {
	return rulerHigh + float64(laneHigh*float64(p.lanes)) + nameHigh
}

// draw draws the piece with its line at the top, from a place on the page to the
// right.
func (p piece) draw(l *sheet.Layer, plan laminate.Plan, left, top float64) {
	long, high := p.to-p.from, p.high()
	p.body(l, left, top, high)
	p.curves(l, left, top)
	p.ruler(l, plan.Units, left, top)
	for _, t := range p.ticks {
		x := left + t.along - p.from
		y := top - rulerHigh - float64(laneHigh*float64(t.lane+1))
		l.Stroke(sheet.Solid(sheet.Black, 0.35), orb.Point{x, top}, orb.Point{x, y})
		words := t.text()
		words.At = orb.Point{x + 0.9, y + 0.4}
		l.Write(words)
	}
	name := p.name()
	name.At = orb.Point{left + 8, top - high + 2}
	l.Write(name)
	words := sheet.Text{Height: 1.9, Words: "ply and joint at each tick; the part is above the line"}
	if len(sheet.Faults(plan.Checks)) > 0 {
		words = sheet.Text{Height: 2.6, Bold: true, Ink: sheet.Fault, Words: sheet.DoNotCut}
	}
	if room := long - name.Width() - 20; room > words.Width() || words.Bold {
		words = words.Fitted(math.Max(room, 20))
		words.At, words.Align = orb.Point{left + math.Max(long-5, name.Width()+30), top - high + 2}, sheet.Right
		l.Write(words)
	}
}

// name says what the piece is.
func (p piece) name() sheet.Text {
	return sheet.Text{Height: 2.6, Bold: true, Words: p.stretch.Name() + ", piece " + strconv.Itoa(p.number) + " of " + strconv.Itoa(p.of) +
		", from " + sheet.Number(p.from, 1) + " to " + sheet.Number(p.to, 1) + " mm from " + p.stretch.From}
}

// wide gives how long the paper of the piece is: its tail is longer where a short
// piece must hold its name.
func (p piece) wide() float64 {
	wide := p.to - p.from + tail
	if p.number == p.of {
		wide = math.Max(wide, p.name().Width()+22)
	}
	return wide
}

// body draws the paper to cut out, the line on top, its ends and splices.
func (p piece) body(l *sheet.Layer, left, top, high float64) {
	right, end := left+p.to-p.from, left+p.wide()
	thin := sheet.Pen{Ink: sheet.Grey, Width: 0.2, Dash: [6]float64{2, 1}}
	l.Stroke(thin, orb.Point{left, top}, orb.Point{left, top - high}, orb.Point{end, top - high}, orb.Point{end, top}, orb.Point{right, top})
	l.Stroke(sheet.Solid(sheet.Black, 0.6), orb.Point{left, top + 0.3}, orb.Point{right, top + 0.3}) // its lower side is the line
	splice := sheet.Solid(sheet.Black, 0.25)
	l.Stroke(splice, orb.Point{left, top}, orb.Point{left, top - high})
	l.Stroke(splice, orb.Point{right, top}, orb.Point{right, top - high})
	ends := [2]string{p.stretch.From, p.stretch.To}
	for i, at := range [2]struct {
		corner bool
		x      float64
		number int
	}{{p.number == 1, left + 3.6, p.number - 1}, {p.number == p.of, end - 4.2, p.number}} {
		y := top - high + 3.4
		if at.corner {
			l.Disc(sheet.Solid(sheet.Black, 0.4), sheet.Fill{Ink: sheet.White}, orb.Point{at.x, y}, 2.8)
			l.Write(sheet.Text{Height: 2.8, Bold: true, Words: ends[i]}.Centred(orb.Point{at.x, y}))
			continue
		}
		splicePoint(l, [2]float64{left, right}[i], top-high, [2]float64{1, -1}[i])
	}
	if p.number < p.of {
		l.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.Pale, Spacing: 2.5, Width: 0.2}, orb.Bound{Min: orb.Point{right, top - high}, Max: orb.Point{right + tail, top}})
		words := sheet.Text{Height: 1.9, Bold: true, Turn: 90, Words: "piece " + strconv.Itoa(p.number+1) + " on top"}
		words = words.Fitted(high - 2).Centred(orb.Point{right + tail/2, top - float64(high/2)})
		l.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.White}, words.Bounds().Pad(0.5))
		l.Write(words)
	}
}

// splicePoint draws half a mark at a splice: both halves make one triangle.
func splicePoint(l *sheet.Layer, x, bottom, side float64) {
	l.Area(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, orb.Point{x, bottom + 1}, orb.Point{x + float64(3*side), bottom + 1}, orb.Point{x, bottom + 5})
}

// ruler writes running lengths from the stretch's first corner: a tick each 10
// mm, a figure each 50 mm.
func (p piece) ruler(l *sheet.Layer, units string, left, top float64) {
	for i := math.Ceil(p.from / 10); 10*i <= p.to; i++ {
		x, long := left+float64(10*i)-p.from, 1.2
		if math.Mod(i, 5) == 0 && 10*i <= p.to-8 {
			long = 2.2
			words := sheet.Number(10*i, 0)
			if units != "mm" {
				words += " mm"
			}
			l.Write(sheet.Text{At: orb.Point{x + 0.6, top - 4.5}, Height: 1.6, Ink: sheet.Grey, Words: words})
		}
		l.Stroke(sheet.Solid(sheet.Grey, 0.12), orb.Point{x, top}, orb.Point{x, top - long})
	}
}

// curveMM is the longest chord of a curve: shorter edges between turns count as
// curved.
const curveMM = 20.0

// curves marks where the line is curved, by a grey band under it.
func (p piece) curves(l *sheet.Layer, left, top float64) {
	at := 0.0
	points := p.stretch.Points
	for i := 0; i+1 < len(points); i++ {
		d := sheet.Towards(points[i], points[i+1])
		long := float64((points[i+1][0]-points[i][0])*d[0]) + float64((points[i+1][1]-points[i][1])*d[1])
		from, to := math.Max(at, p.from), math.Min(at+long, p.to)
		at += long
		if long > curveMM || to <= from || len(points) < 4 {
			continue
		}
		box := orb.Bound{Min: orb.Point{left + from - p.from, top - 5.6}, Max: orb.Point{left + to - p.from, top - 4.6}}
		l.Box(sheet.Pen{}, sheet.Fill{Ink: "#8A8A8A"}, box)
	}
}
