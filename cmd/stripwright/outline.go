package main

import (
	"cmp"
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"stripwright/geometry"
	"stripwright/geometry/drawing"
	"stripwright/geometry/length"
	"stripwright/output/outline"
)

type outlineOptions struct {
	file   string
	json   bool
	svg    string
	layers []string
	units  string
	joinMM float64
	which  *int
	clear  clearOptions
}

func newOutlineCommand(s stream) *cobra.Command {
	var o outlineOptions
	c := &cobra.Command{
		Use:   "outline DRAWING",
		Short: "Show what is read from a drawing",
		Long: `Outline reads a drawing as a job would and shows what it finds: size in mm and in
inches, area, contours, layers, notes and problems. In a job file the options
--layer, --units, --join and --which are the keys layer, drawing_units, join and
which of the part. DRAWING may be "-" for standard input.

With --svg it also draws what was read, true to scale and the way up that it is
seen, with sizes, holes, the 0° arrow and the named corners, to be compared with
the drawing on screen; "-" sends the drawing to standard output and the text to
standard error. A file is replaced only when outline wrote it and nothing in it
was changed since.

The options --keep-clear-… show what a job would keep clear of joints: the keys
layer, holes_up_to and grow of keep_clear. They are listed with their sizes and
drawn on the sheet.`,
		Example: "  stripwright outline hatch.dxf\n  stripwright outline hatch.dxf --layer LID --svg read.svg\n  stripwright outline hatch.dxf --layer LID --units in --json\n  stripwright outline hatch.dxf --layer LID --keep-clear-layer BOLTS --keep-clear-grow 15 --svg read.svg",
		Args:    arguments("DRAWING"),
		RunE: func(c *cobra.Command, args []string) error {
			o.file = args[0]
			return runOutline(c.Context(), s, o)
		},
	}
	f := c.Flags()
	f.BoolVar(&o.json, "json", false, "print what was read as JSON")
	f.Var(onceText(&o.svg, "FILE"), "svg", "draw what was read into this file (- for standard output)")
	f.Var(many{&o.layers}, "layer", "take only this layer or group (may be repeated)")
	f.Var(onceDrawingUnit(&o.units), "units", "unit of the drawing, where it does not say or says it wrongly")
	f.Var(onceLength(&o.joinMM), "join", "close gaps up to this length (bare number: mm)")
	f.Var(onceWhole(&o.which, 1), "which", "take this one of several outlines, from 1")
	o.clear.flags(f)
	return c
}

func runOutline(_ context.Context, s stream, o outlineOptions) error {
	if o.svg == standard && o.json {
		return mistake("stripwright outline: --svg - and --json both write to standard output: name a file for the drawing")
	}
	if err := o.clear.check(); err != nil {
		return err
	}
	data, err := s.readInput(o.file)
	if err != nil {
		return err
	}
	opts := drawing.Options{Layers: o.layers, Units: o.units, JoinMM: o.joinMM}
	if o.which != nil {
		opts.Which = *o.which
	}
	d := drawing.Read(filepath.Base(o.file), data, opts)
	clears, m := keptClear(o, opts, data, d)
	if err := s.showOutline(o, d, clears); err != nil || len(d.Problems)+len(m) == 0 {
		return err
	}
	for _, p := range d.Problems {
		m = append(m, problemLine(o.file, p))
	}
	return m
}

// showOutline writes the drawing where it is wanted, then the report.
func (s stream) showOutline(o outlineOptions, d drawing.Drawing, clears []outline.Clear) error {
	report := s.out
	if o.svg != "" {
		picture, err := outlineDrawing(o, d, clears)
		if err != nil {
			return err
		}
		if o.svg == standard {
			report = s.err
			_, err = s.out.Write(picture)
		} else {
			err = writeDrawing(o.svg, picture)
		}
		if err != nil {
			return err
		}
	}
	if o.json {
		return printJSON(s, outlineJSON(d, clears))
	}
	_, err := fmt.Fprint(report, outlineText(o.file, d, clears))
	return err
}

func problemLine(file string, p drawing.Problem) string {
	line := cmp.Or(p.Where, file) + ": " + p.Rule + ": " + p.Text
	if p.Cure != "" {
		line += " — " + p.Cure
	}
	return line
}

// outlineText lists what was read for people.
func outlineText(file string, d drawing.Drawing, clears []outline.Clear) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", file)
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	row := func(name, format string, args ...any) {
		fmt.Fprintf(t, "  %s\t%s\n", name, fmt.Sprintf(format, args...))
	}
	if len(d.Regions) > 0 {
		row("size", "%s × %s  (%s × %s)", length.MM(d.SizeMM[0]), length.MM(d.SizeMM[1]), length.Inches(d.SizeMM[0]), length.Inches(d.SizeMM[1]))
		row("area", "%.4f m²", d.AreaMM2/1e6)
	}
	if d.UnitFrom != "" {
		row("unit", "%s", d.UnitFrom)
	}
	for i, r := range d.Regions {
		w, h := r.Size()
		row(fmt.Sprintf("outline %d", i+1), "%s × %s, %d corners, %d holes", length.MM(w), length.MM(h), len(r.Outer), len(r.Holes))
	}
	for _, c := range clears {
		row("keep clear", "%s", c.Words())
	}
	for _, l := range d.Layers {
		row("layer", "%s: %d closed contours", cmp.Or(l.Name, "(none)"), l.Contours)
	}
	for _, n := range d.Notes {
		row("note", "%s: %s: %s", n.Where, n.Rule, n.Text)
	}
	t.Flush()
	return b.String()
}

// outlineJSON is the form for machines; lists are never null.
func outlineJSON(d drawing.Drawing, clears []outline.Clear) any {
	regions := []geometry.Region{}
	for _, r := range d.Regions {
		regions = append(regions, listed(r))
	}
	return struct {
		SizeMM   [2]float64        `json:"size_mm"`
		AreaMM2  float64           `json:"area_mm2"`
		UnitFrom string            `json:"unit_from"`
		Regions  []geometry.Region `json:"regions"`
		Clear    []clearJSON       `json:"keep_clear"`
		Layers   []drawing.Layer   `json:"layers"`
		Notes    []drawing.Note    `json:"notes"`
		Problems []drawing.Problem `json:"problems"`
	}{
		d.SizeMM, d.AreaMM2, d.UnitFrom, regions, clearsJSON(clears),
		append([]drawing.Layer{}, d.Layers...), append([]drawing.Note{}, d.Notes...), append([]drawing.Problem{}, d.Problems...),
	}
}
