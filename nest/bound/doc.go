// Package bound proves how little roll the plies of one fabric could take: no
// plan that keeps the stagger can be shorter than the bound, whatever its
// phases and however its pieces are laid.
//
// Eight arguments, the best of which holds:
//
//   - area: the roll is no smaller than the blanks.
//   - chord: strips are never cut across, so every level of the roll is a
//     one-dimensional bin for the chords of the plies along the roll. A dual
//     feasible function (Fekete and Schepers, Mathematical Programming 91,
//     2001) shows that a length is too short.
//   - roll ends: where chords have few lengths, a level of a roll is filled to a sum
//     of them at the most, so that what is left before the end of each roll, or
//     before the last cut, stays empty.
//   - strips: plies of one rectangle whose phases settle each other but for one
//     number may leave edge strips that fill whole strips for no such number, of
//     whole µm.
//   - interlock: two convex pieces that face each other are parted by a
//     straight line, so each convex end of a full-width strip wastes what lies
//     between it and its best tangent, unless a narrow piece lies there.
//   - openings: what a full-width piece encloses (with the roll's edges) can
//     only be filled by whole narrow pieces that are short enough for it.
//   - straight ends: where pieces are cut as oblongs, each takes as much roll as it is
//     long and high, hollows and all.
//   - across: every place along the roll is a bin of the roll's width for what
//     pieces measure across it there. Between two parts of one piece that leave
//     no room beside them, nothing lies that is longer than they are apart.
//
// All but the first three depend on the phases. Their least value is found over all
// phases that the stagger leaves, by branch and bound over ranges of phase. What
// a range wastes at least holds for every phase in it, never for samples alone:
// openings are quadratic functions of the phase between vertices; of an end only
// that part counts which all bands of the range share, and of what a piece
// measures across the roll the least, a concave function of the phase.
//
// The same can be asked of given phases alone, which tells what is lost by laying the
// pieces from what is lost by where the joints are.
//
// Lengths are µm and areas µm² in the frame of a ply. The package knows no
// layout and no price; it never looks at a plan.
package bound
