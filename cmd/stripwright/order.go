package main

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"stripwright/output/list"
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
		Short: "Say what to order for a job: cloth, resin, consumables, core",
		Long: `Order plans and checks a job and prints its quantities only: of each roll width
what is used, what comes from rolls on hand and what is to buy, with the spare;
resin and hardener with the batches to mix, what is used up under the bag and
the sheets of core, where the job states them; the dry weight of each ply. Each
figure says whether it is computed, given or assumed. JOB may be "-" for
standard input.`,
		Example: "  stripwright order hatch.yaml",
		Args:    arguments("JOB"),
		RunE: func(c *cobra.Command, args []string) error {
			o.job = args[0]
			return runOrder(c.Context(), s, o)
		},
	}
	c.Flags().BoolVar(&o.json, "json", false, "print the order as JSON")
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
		data, err := list.OrderJSON(p)
		if err != nil {
			return err
		}
		_, err = s.out.Write(data)
		return err
	}
	_, err = fmt.Fprint(s.out, list.OrderText(p))
	return err
}
