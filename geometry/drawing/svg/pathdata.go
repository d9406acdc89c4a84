package svg

import (
	"fmt"

	"github.com/paulmach/orb"

	"stripwright/geometry/curve"
)

// run is one piece of path data from a move on, curves turned into points.
type run struct {
	points []orb.Point
	closed bool
}

// pen follows path data.
type pen struct {
	s        scanner
	chord    float64
	out      []run
	now      run
	at       orb.Point // where the pen is
	start    orb.Point // where the run began
	handle   orb.Point // last control point, for S and T
	previous byte      // the command before, in capitals
}

// parsePath reads path data to its end; an error says where in the data it
// lies.
func parsePath(data string, chord float64, most int) ([]run, error) {
	p := pen{s: scanner{text: data}, chord: chord}
	var command byte
	for total := 0; !p.s.done(); {
		switch c := p.s.peek(); {
		case isCommand(c):
			command = c
			p.s.at++
		case !p.s.startsNumber() || command == 0 || command|0x20 == 'z':
			return nil, p.fail(fmt.Errorf("%q is no path command", c))
		case command == 'M':
			command = 'L'
		case command == 'm':
			command = 'l'
		}
		if p.previous == 0 && command|0x20 != 'm' {
			return nil, p.fail(fmt.Errorf("it must begin with M"))
		}
		before := len(p.now.points)
		if err := p.draw(command); err != nil {
			return nil, p.fail(err)
		}
		if total += max(len(p.now.points)-before, 0) + 1; total > most {
			return nil, p.fail(fmt.Errorf("it draws more than %d points", most))
		}
		p.previous = command &^ 0x20
		if command|0x20 != 'z' {
			if err := p.between(); err != nil {
				return nil, p.fail(err)
			}
		}
	}
	p.lift()
	return p.out, nil
}

func isCommand(c byte) bool {
	switch c | 0x20 {
	case 'm', 'l', 'h', 'v', 'c', 's', 'q', 't', 'a', 'z':
		return true
	}
	return false
}

// between skips a comma, which must not come before a command or the end.
func (p *pen) between() error {
	p.s.blanks()
	if p.s.peek() != ',' {
		return nil
	}
	p.s.comma()
	if !p.s.startsNumber() {
		return errNoNumber
	}
	return nil
}

func (p *pen) fail(err error) error {
	return fmt.Errorf("path data, at letter %d: %w", p.s.at+1, err)
}

// lift ends the run; a move alone draws nothing.
func (p *pen) lift() {
	if len(p.now.points) > 1 {
		p.out = append(p.out, p.now)
	}
	p.now = run{}
}

// arguments says how many numbers each command takes; A is read apart.
var arguments = map[byte]int{'m': 2, 'l': 2, 'h': 1, 'v': 1, 'c': 6, 's': 4, 'q': 4, 't': 2, 'z': 0, 'a': 0}

// draw reads one command's numbers and follows it.
func (p *pen) draw(command byte) error {
	low, relative := command|0x20, command >= 'a'
	var a [6]float64
	for i := range arguments[low] {
		if i > 0 {
			p.s.comma()
		}
		v, err := p.s.number()
		if err != nil {
			return err
		}
		a[i] = v
	}
	from := orb.Point{}
	if relative {
		from = p.at
	}
	point := func(i int) orb.Point { return orb.Point{from[0] + a[i], from[1] + a[i+1]} }
	switch low {
	case 'm':
		p.lift()
		p.at, p.start = point(0), point(0)
	case 'l':
		p.line(point(0))
	case 'h':
		p.line(orb.Point{from[0] + a[0], p.at[1]})
	case 'v':
		p.line(orb.Point{p.at[0], from[1] + a[0]})
	case 'c':
		p.cubic(point(0), point(2), point(4))
	case 's':
		p.cubic(p.mirrored('C', 'S'), point(0), point(2))
	case 'q':
		p.quadratic(point(0), point(2))
	case 't':
		p.quadratic(p.mirrored('Q', 'T'), point(0))
	case 'a':
		return p.arc(from)
	case 'z':
		p.close()
	}
	return nil
}

// mirrored gives the control point that runs on smoothly from the curve before,
// if that was one of the kinds named.
func (p *pen) mirrored(kinds ...byte) orb.Point {
	for _, k := range kinds {
		if p.previous == k {
			return orb.Point{2*p.at[0] - p.handle[0], 2*p.at[1] - p.handle[1]}
		}
	}
	return p.at
}

// add puts points after the pen; the first of them is where it is.
func (p *pen) add(points []orb.Point) {
	if len(p.now.points) == 0 {
		p.now.points = append(p.now.points, p.at)
	}
	if len(points) > 1 {
		p.now.points = append(p.now.points, points[1:]...)
		p.at = points[len(points)-1]
	}
}

func (p *pen) line(to orb.Point) { p.add([]orb.Point{p.at, to}) }

func (p *pen) cubic(c1, c2, to orb.Point) {
	p.add(curve.Cubic(p.at, c1, c2, to, p.chord))
	p.handle = c2
}

func (p *pen) quadratic(c, to orb.Point) {
	p.add(curve.Quadratic(p.at, c, to, p.chord))
	p.handle = c
}

// close draws back to where the run began; the next run begins there too.
func (p *pen) close() {
	p.now.closed = true
	p.lift()
	p.at = p.start
}
