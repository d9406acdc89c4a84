// Package planfile reads and writes plan.json, the one record of a plan from
// which every sheet is drawn, and holds its JSON Schema.
//
// A plan file is JSON: the format name and version first, then the part, the
// rules, the fabrics, plies, rolls and figures of laminate.Plan under the names
// of its fields. Lengths are millimetres with at most three decimals, angles
// degrees with at most nine, ratios and prices per area with twelve significant
// digits or more. Rings are open: the first vertex is not repeated. Each ring,
// and each small thing, stands on one line, so that a file can be read and
// compared by people.
//
// Encode writes the same bytes for the same plan. Decode holds the form: every
// field is required but the few marked omitempty in the model; unknown fields
// are left out and named, for later programs may add some. What the schema takes
// Decode takes; the schema also holds the words of a plan (faces, kinds of
// joint) and signs, which Decode leaves to the check.
//
// The package does not judge a plan: that is package check's.
package planfile
