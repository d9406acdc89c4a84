package main

import (
	"github.com/spf13/cobra"

	"stripwright/laminate/planfile"
)

func newSchemaCommand(s stream) *cobra.Command {
	return &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of plan.json",
		Args:  arguments(),
		RunE: func(*cobra.Command, []string) error {
			_, err := s.out.Write(planfile.Schema())
			return err
		},
	}
}
