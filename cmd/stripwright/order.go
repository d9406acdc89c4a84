package main

import (
	"context"
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"stripwright/geometry/length"
	"stripwright/laminate"
	"stripwright/laminate/order"
)

type orderOptions struct {
	job    string
	json   bool
	effort string
	seed   *int64
}

func newOrderCommand(s stream) *cobra.Command {
	var o orderOptions
	c := &cobra.Command{
		Use:   "order JOB",
		Short: "Say what cloth to order for a job, and what the plies weigh",
		Long: `Order plans and checks a job and prints its quantities only: the length of each
roll width that is used, how much of it comes from rolls on hand and what is to
buy, with the spare; area and dry weight of each ply. JOB may be "-" for
standard input.`,
		Example: "  stripwright order hatch.yaml",
		Args:    arguments("JOB"),
		RunE: func(c *cobra.Command, args []string) error {
			o.job = args[0]
			return runOrder(c.Context(), s, o)
		},
	}
	c.Flags().BoolVar(&o.json, "json", false, "print the quantities as JSON")
	searchFlags(c, &o.effort, &o.seed)
	return c
}

func runOrder(ctx context.Context, s stream, o orderOptions) error {
	p, err := s.planJob(ctx, o.job, o.effort, o.seed)
	if err != nil {
		return err
	}
	if err := verdict(p); err != nil {
		for _, c := range p.Checks {
			if !c.Pass {
				fmt.Fprintf(s.err, "%s: %s: %s\n", o.job, c.Rule, c.Text)
			}
		}
		return fault{"DO NOT ORDER: the plan fails its check"}
	}
	if o.json {
		return printJSON(s, map[string]any{"lengths": p.Lengths, "quantities": p.Quantities})
	}
	_, err = fmt.Fprint(s.out, orderText(p))
	return err
}

// orderText lists cloth and weights.
func orderText(p laminate.Plan) string {
	var b strings.Builder
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "FABRIC\tROLL WIDTH\tUSED\tON HAND\tTO BUY\t")
	for _, l := range p.Lengths {
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\t%s\t\n", l.Fabric, length.MM(l.WidthMM), metres(l.UsedMM), metres(order.OnHand(p, l)), metres(l.ToBuyMM))
	}
	t.Flush()
	b.WriteByte('\n')
	fmt.Fprintln(t, "PLY\tFABRIC\tBLANK\tDRY\t")
	area, dry := 0.0, 0.0
	for i, q := range p.Quantities {
		fmt.Fprintf(t, "%d\t%s\t%.3f m²\t%.0f g\t\n", q.Ply, p.Plies[i].Fabric, q.AreaMM2/1e6, q.DryG)
		area, dry = area+q.AreaMM2, dry+q.DryG
	}
	fmt.Fprintf(t, "all\t\t%.3f m²\t%.0f g\t\n", area/1e6, dry)
	t.Flush()
	return b.String()
}

// metres prints a length of roll in metres and yards.
func metres(mm float64) string {
	return fmt.Sprintf("%.3f m (%.2f yd)", mm/1000, mm/914.4)
}
