// Package job reads a job file, the YAML text in which a shop says what is to
// be built: the part and its trim allowance, the fabrics with their rolls, the
// laminate schedule and the joint rules. Out comes a laminate.Job without a
// doubt in it, or every problem of the file at once, each with its line and
// column, a rule name, a sentence and a cure.
//
// Reading is strict. A key that is not known, one that stands twice, an empty
// value, a number that can be read in two ways: each is refused, never guessed
// at, because a plan from a misread job looks right. What a job leaves out and
// may leave out is filled in and noted ("assumed narrowest 25 mm"); stagger,
// plies_between and trim are never filled in. Keys that a later version will
// read are refused by name.
//
// Values are taken from the text as it stands in the file, not from what YAML
// makes of it, so that 0300, 1.10, no and 007 keep their letters.
//
// Order of work: the text (source.go, syntax.go), the shape of the tree
// (strict.go, block.go), values (scalar.go), the blocks of the file (one file
// each), and what only the whole can tell (sense.go). Drawings are read by
// package geometry/drawing, the blank is grown by package geometry/grow.
//
// The package decides nothing about joints: whether the stagger is possible is
// for package nest.
package job
