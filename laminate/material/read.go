package material

import (
	_ "embed" // library.csv
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"stripwright/laminate"
)

//go:embed library.csv
var libraryFile string

// Generic gives the library of library.csv.
func Generic() Library { return generic() }

// generic reads the file once; it is linked into the program and held by the
// tests, so that it cannot fail but by a fault of the build.
var generic = sync.OnceValue(func() Library {
	l, err := read(libraryFile)
	if err != nil {
		panic("library.csv: " + err.Error())
	}
	return l
})

// entry is one line of the file.
type entry struct {
	kind, name, quantity string
	value, low, high     float64
	unit, source         string
}

var head = []string{"kind", "name", "quantity", "value", "low", "high", "unit", "source"}

// entries reads the lines of a library file; one that is wrong is an error that
// names its line.
func entries(text string) ([]entry, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 || strings.Join(rows[0], ",") != strings.Join(head, ",") {
		return nil, fmt.Errorf("the first line must read %s", strings.Join(head, ","))
	}
	var out []entry
	for i, row := range rows[1:] {
		e, err := entryOf(row)
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", i+2, err)
		}
		out = append(out, e)
	}
	return out, nil
}

func entryOf(row []string) (entry, error) {
	e := entry{kind: row[0], name: row[1], quantity: row[2], unit: row[6], source: row[7]}
	for i, to := range []*float64{&e.value, &e.low, &e.high} {
		v, err := strconv.ParseFloat(row[3+i], 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			return e, fmt.Errorf("%s is no number: %q", head[3+i], row[3+i])
		}
		*to = v
	}
	switch {
	case e.value < e.low || e.value > e.high:
		return e, fmt.Errorf("%v is not between %v and %v", e.value, e.low, e.high)
	case e.source == "":
		return e, fmt.Errorf("the source is missing")
	}
	return e, nil
}

// read makes a library of a file's text.
func read(text string) (Library, error) {
	es, err := entries(text)
	if err != nil {
		return Library{}, err
	}
	var l Library
	for i, e := range es {
		if err := l.take(e); err != nil {
			return Library{}, fmt.Errorf("line %d: %w", i+2, err)
		}
	}
	return l, nil
}

// take puts an entry where it belongs; entries of one kind stand together.
func (l *Library) take(e entry) error {
	f := laminate.Figure{Value: e.value, Basis: laminate.Assumed, From: "generic " + e.name}
	switch e.kind {
	case "fibre":
		if n := len(l.fibres); n == 0 || l.fibres[n-1].Name != e.name {
			l.fibres = append(l.fibres, laminate.FibreKind{Name: e.name})
		}
		return put(fibreFigures(&l.fibres[len(l.fibres)-1]), e, f)
	case "resin":
		if n := len(l.resins); n == 0 || l.resins[n-1].Name != e.name {
			l.resins = append(l.resins, laminate.ResinKind{Name: e.name})
		}
		return put(resinFigures(&l.resins[len(l.resins)-1]), e, f)
	case "content":
		words, _, _ := strings.Cut(e.source, ", from memory")
		f.From = fmt.Sprintf("%s, usually %.2f to %.2f", words, e.low, e.high)
		l.contents = append(l.contents, content{e.name, f, e.low, e.high})
		return nil
	}
	return fmt.Errorf("kind %q is neither fibre, resin nor content", e.kind)
}

func put(figures []named, e entry, f laminate.Figure) error {
	for _, n := range figures {
		switch {
		case n.name != e.quantity:
		case n.figure.Known():
			return fmt.Errorf("%s of %s stands twice", e.quantity, e.name)
		default:
			*n.figure = f
			return nil
		}
	}
	return fmt.Errorf("quantity %q is not known", e.quantity)
}
