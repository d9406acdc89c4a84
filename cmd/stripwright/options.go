package main

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"stripwright/geometry/drawing"
	"stripwright/geometry/length"
)

// once is an option that may be given one time only: a second value would
// silently win over the first.
type once struct {
	set  bool
	text string
	kind string
	to   func(text string) error
}

func (o *once) String() string { return o.text }
func (o *once) Type() string   { return o.kind }

// Set takes the option's value.
func (o *once) Set(text string) error {
	if o.set {
		return fmt.Errorf("it is given twice, %q and %q: give it once", o.text, text)
	}
	if err := o.to(text); err != nil {
		return err
	}
	o.set, o.text = true, text
	return nil
}

func onceText(to *string, kind string) *once {
	return &once{text: *to, kind: kind, to: func(text string) error {
		if text == "" {
			return fmt.Errorf("it is empty")
		}
		*to = text
		return nil
	}}
}

func onceChoice(to *string, choices ...string) *once {
	return &once{text: *to, kind: strings.Join(choices, "|"), to: func(text string) error {
		for _, c := range choices {
			if text == c {
				*to = text
				return nil
			}
		}
		return fmt.Errorf("%q is none of %s", text, strings.Join(choices, ", "))
	}}
}

func onceDrawingUnit(to *string) *once {
	return &once{text: *to, kind: "mm|cm|m|in|ft|yd|N/in", to: func(text string) error {
		if !drawing.IsUnit(text) {
			return fmt.Errorf("%q is none of mm, cm, m, in, ft, yd, nor a number of units an inch such as 72/in", text)
		}
		*to = text
		return nil
	}}
}

func onceWhole[N int | int64](to **N, least int64) *once {
	return &once{kind: "N", to: func(text string) error {
		n, err := strconv.ParseInt(text, 10, 64)
		if err != nil || n < least || int64(N(n)) != n {
			return fmt.Errorf("%q is not a whole number from %d", text, least)
		}
		v := N(n)
		*to = &v
		return nil
	}}
}

func onceLength(to *float64) *once {
	return &once{kind: "LENGTH", to: func(text string) error {
		mm, err := length.Parse(text, "mm")
		if err == nil && mm <= 0 {
			err = fmt.Errorf("%q: a length above zero is wanted", text)
		}
		*to = mm
		return err
	}}
}

// many is an option that may be repeated; values are taken whole, commas and
// all.
type many struct{ to *[]string }

func (m many) String() string { return strings.Join(*m.to, ", ") }
func (m many) Type() string   { return "NAME" }

// Set adds a value.
func (m many) Set(text string) error {
	if text == "" {
		return fmt.Errorf("it is empty")
	}
	*m.to = append(*m.to, text)
	return nil
}

// flagMistake words an error of the option parser.
func flagMistake(c *cobra.Command, err error) error {
	text := err.Error()
	if rest, ok := strings.CutPrefix(text, "invalid argument "); ok {
		// invalid argument "x" for "--seed" flag: why
		if _, after, ok := strings.Cut(rest, ` for "`); ok {
			name, why, _ := strings.Cut(after, `" flag: `)
			text = fmt.Sprintf("option %s: %s", name, why)
		}
	}
	return mistake("%s: %s (see %s --help)", c.CommandPath(), strings.ReplaceAll(text, "flag", "option"), c.CommandPath())
}

var singleDash = regexp.MustCompile(`^-([a-zA-Z][a-zA-Z-]+)(=.*)?$`)

// looseDash refuses long options with a single dash, which the parser would
// take for a row of short ones.
func looseDash(root *cobra.Command, args []string) error {
	c, _, err := root.Find(args)
	if err != nil || c == nil {
		c = root
	}
	for _, a := range args {
		if a == "--" {
			return nil
		}
		m := singleDash.FindStringSubmatch(a)
		if m == nil || c.Flags().Lookup(m[1]) == nil && c.Flags().ShorthandLookup(m[1][:1]) != nil {
			continue
		}
		return mistake("%s: unknown option %s: did you mean --%s?", c.CommandPath(), a, m[1])
	}
	return nil
}

// arguments checks the number of arguments, named as in the usage line.
func arguments(names ...string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		switch {
		case len(args) < len(names):
			return mistake("%s: %s is missing (see %s --help)", c.CommandPath(), names[len(args)], c.CommandPath())
		case len(args) > len(names):
			return mistake("%s: one too many: %q (see %s --help)", c.CommandPath(), args[len(names)], c.CommandPath())
		}
		return nil
	}
}

// outFlag adds -o.
func outFlag(f *pflag.FlagSet, to *string) {
	f.VarP(onceText(to, "DIR"), "out", "o", "folder for plan.json and the sheets")
}
