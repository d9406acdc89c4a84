package nest

import "fmt"

// Rules that a job can be refused under.
const (
	RuleStagger   = "stagger"
	RuleKeepClear = "keep clear"
	RuleNarrowest = "narrowest"
	RuleStock     = "stock"
	RuleTable     = "table"
)

// Refusal is the error of a job that cannot be planned: the rule, the plies it
// concerns, and what would help. LargestStaggerMM is the largest stagger that
// is possible, 0 where the rule is not the stagger.
type Refusal struct {
	Rule             string
	Plies            []int
	LargestStaggerMM float64
	Text             string
	Cures            []string
}

// Error gives the refusal as one sentence without the cures.
func (r *Refusal) Error() string { return fmt.Sprintf("%s: %s", r.Rule, r.Text) }
