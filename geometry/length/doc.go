// Package length reads and prints the measures of the trade: lengths, areal
// weights, densities, masses, areas, prices, moduli, percentages, angles and
// counts, each with its unit as a laminator writes it.
//
// A length comes back in millimetres, a weight in g/m², a density in g/cm³, a
// mass in g, an area in mm², a price per metre of roll or per kilogram. The factors are exact: an inch is 25.4 mm, an ounce
// 28.349523125 g. A number of up to fifteen digits is converted with a single
// rounding, so that 1 1/2 in is the same float64 as 38.1 mm.
//
// What can be misread is refused rather than guessed at, with a sentence and a
// cure (*Error): a decimal comma, a leading zero, an exponent, a fraction of a
// millimetre, a number without an end, a unit that does not exist.
//
// The package knows no keys and no files: which sizes make sense for a roll or
// a trim allowance is judged where they are used.
package length
