package main

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"stripwright/laminate"
	"stripwright/laminate/check"
)

type checkOptions struct {
	plan string
	json bool
}

func newCheckCommand(s stream) *cobra.Command {
	var o checkOptions
	c := &cobra.Command{
		Use:   "check PLAN",
		Short: "Judge a plan.json from the plan alone",
		Long: `Check works out from a plan.json alone whether it is sound: every ply covered
once, no joints stacked, keep-clear regions without joints, pieces that are
their strips and do not overlap on the roll, widths and lengths kept, the bound
not above what is used. Positions in the plan may have been edited, or be as
laid. PLAN may be "-" for standard input.`,
		Example: "  stripwright check out/hatch/plan.json",
		Args:    arguments("PLAN"),
		RunE: func(c *cobra.Command, args []string) error {
			o.plan = args[0]
			return runCheck(c.Context(), s, o)
		},
	}
	c.Flags().BoolVar(&o.json, "json", false, "print the findings as JSON")
	return c
}

func runCheck(_ context.Context, s stream, o checkOptions) error {
	p, err := s.readPlan(o.plan)
	if err != nil {
		return err
	}
	findings := check.Plan(p)
	sound := check.Sound(findings)
	if o.json {
		err = printJSON(s, map[string]any{"sound": sound, "checks": findings})
	} else {
		_, err = fmt.Fprint(s.out, s.painted(verdictText(findings, sound), sound))
	}
	if err == nil && !sound {
		err = fault{}
	}
	return err
}

// verdictText lists findings, the verdict first.
func verdictText(findings []laminate.CheckResult, sound bool) string {
	var b strings.Builder
	if sound {
		b.WriteString("SOUND: every rule is kept\n")
	} else {
		b.WriteString("DO NOT CUT: the plan is not sound\n")
	}
	for _, f := range findings {
		mark := "ok   "
		switch {
		case !f.Pass:
			mark = "FAULT"
		case strings.HasPrefix(f.Text, laminate.Warning):
			mark = "warn "
		}
		fmt.Fprintf(&b, "%s  %-10s  %6d looked at", mark, f.Rule, f.Counted)
		if f.Text != "" {
			fmt.Fprintf(&b, "  %s", f.Text)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

func printJSON(s stream, v any) error {
	data, err := json.MarshalIndent(v, "", "  ")
	if err != nil {
		return err
	}
	_, err = s.out.Write(append(data, '\n'))
	return err
}
