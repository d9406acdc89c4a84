package laminate

// Where a figure comes from.
const (
	Given    = "given"    // written in the job
	Assumed  = "assumed"  // filled in from a table or a custom of the trade
	Computed = "computed" // worked out from others
)

// Figure is a value with its basis: Given, Assumed or Computed, and what an
// assumed one stands on ("generic E-glass", "infused glass, 0.48 to 0.55"). The
// zero Figure is one that nobody stated.
type Figure struct {
	Value float64 `json:"value"`
	Basis string  `json:"basis"`
	From  string  `json:"from,omitempty"`
}

// Known says whether the figure was stated, assumed or computed.
func (f Figure) Known() bool { return f.Basis != "" }
