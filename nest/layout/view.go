package layout

import "stripwright/geometry/band"

// Slack is by how much, in µm, the lean outline may be off.
const Slack = slack

// Lean gives the blank with few enough vertices for searching: within Slack of
// the blank, and the blank itself when its vertices are few.
func (b *Base) Lean() *band.Outline { return b.lean }

// Net gives the material that joints count in, lean.
func (b *Base) Net() *band.Outline { return b.net }
