package sheet

import "github.com/paulmach/orb"

// The places of a sheet are worked out by the functions below. Each product is
// rounded before it is added, float64(a*b), so that no processor joins the two
// steps in one and draws another digit than the next.

// Along goes from p in the direction d, by times its length.
func Along(p, d orb.Point, by float64) orb.Point {
	return orb.Point{p[0] + float64(by*d[0]), p[1] + float64(by*d[1])}
}

// Beside goes from p in the direction d, by times its length, and then to the
// left of it as many times as left says.
func Beside(p, d orb.Point, by, left float64) orb.Point {
	return orb.Point{
		p[0] + float64(by*d[0]) - float64(left*d[1]),
		p[1] + float64(by*d[1]) + float64(left*d[0]),
	}
}

// Between gives the place at a share of the way between two others: 0 is the
// first, 1 the second.
func Between(from, to orb.Point, share float64) orb.Point {
	return Along(from, orb.Point{to[0] - from[0], to[1] - from[1]}, share)
}
