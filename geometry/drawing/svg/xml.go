package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"

	"golang.org/x/text/encoding/htmlindex"

	"stripwright/geometry/drawing/trace"
)

// Element is one element of the drawing with what it holds.
type Element struct {
	Name     string // "path", without its name space
	Attr     []Attribute
	Children []*Element
	Line     int    // of the file, where its tag ends
	text     []byte // of a style element
	foreign  bool   // of another name space than the drawing's: not drawn
	parent   *Element
	id       string
	classes  []string
	original *Element // of one whose attributes a style has replaced
}

// Attribute is one attribute of SVG itself, or one of those in other name
// spaces that are read: label, groupmode and href.
type Attribute struct{ Name, Value string }

// bounds of a drawing, so that a hostile file cannot fill the memory.
const (
	mostElements = 300_000
	mostUsed     = 50_000 // drawn by way of use elements
	deepest      = 250
)

// svgSpace is the name space of SVG; a drawing that names none is taken too.
const svgSpace = "http://www.w3.org/2000/svg"

const xmlCure = "save the drawing as plain SVG again"

// get gives an attribute's value without blanks around it.
func (e *Element) get(name string) (value string, there bool) {
	for _, a := range e.Attr {
		if a.Name == name {
			return strings.TrimSpace(a.Value), true
		}
	}
	return "", false
}

// Parse reads the XML of a drawing. What cannot be taken is in the report; the
// element is nil then.
func Parse(data []byte, r *trace.Report) *Element {
	d := xml.NewDecoder(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff"))))
	d.CharsetReader = charset
	d.Entity = map[string]string{}
	t := tree{report: r}
	for {
		token, err := d.Token()
		line, _ := d.InputPos()
		if errors.Is(err, io.EOF) && t.root != nil && len(t.open) == 0 {
			return t.root
		}
		if err != nil {
			tellXML(err, line, r)
			return nil
		}
		ok := true
		switch token := token.(type) {
		case xml.Directive:
			if ok = declareEntities(string(token), d.Entity, bytes.Count(data, []byte("&"))); !ok {
				r.Problem("entities", r.Line(line), xmlCure, "the drawing declares XML entities made of entities, or too many")
			}
		case xml.ProcInst:
			if token.Target == "xml-stylesheet" {
				r.Problem("not-read", r.Line(line), styleCure, "the drawing takes its style from another file")
			}
		case xml.StartElement:
			ok = t.begin(token, line)
		case xml.EndElement:
			t.open = t.open[:len(t.open)-1]
		case xml.CharData:
			if n := len(t.open); n > 0 && t.open[n-1].Name == "style" {
				t.open[n-1].text = append(t.open[n-1].text, token...)
			}
		}
		if !ok {
			return nil
		}
	}
}

// tree is an element tree that is being read.
type tree struct {
	report *trace.Report
	root   *Element
	space  string     // name space of the root
	open   []*Element // from the root to where reading is
	count  int
}

// begin adds an element; not ok when the tree has grown too large or is no
// drawing.
func (t *tree) begin(token xml.StartElement, line int) bool {
	e := element(token, line)
	r := t.report
	if t.count++; t.count > mostElements || len(t.open) > deepest {
		r.Problem("size", r.Line(line), "keep only the outline in the drawing",
			"the drawing holds more than %d elements, or they lie more than %d deep", mostElements, deepest)
		return false
	}
	if name := repeated(token.Attr); name != "" {
		r.Problem("syntax", r.Line(line), xmlCure, "<%s> has the attribute %s twice", trace.Printable(e.Name), trace.Printable(name))
		return false
	}
	switch {
	case len(t.open) > 0:
		e.foreign = token.Name.Space != t.space && token.Name.Space != svgSpace
		parent := t.open[len(t.open)-1]
		parent.Children, e.parent = append(parent.Children, e), parent
	case t.root != nil || e.Name != "svg":
		r.Problem("format", r.Line(line), "save the drawing as SVG or DXF", "the file is XML but no SVG: it begins with <%s>", trace.Printable(e.Name))
		return false
	default:
		t.root, t.space = e, token.Name.Space
	}
	t.open = append(t.open, e)
	return true
}

// charset decodes the encoding that the XML declaration names.
func charset(name string, in io.Reader) (io.Reader, error) {
	if strings.HasPrefix(strings.ToLower(name), "utf-16") {
		return in, nil // turned into UTF-8 already, by its mark
	}
	enc, err := htmlindex.Get(name)
	if err != nil {
		return nil, errors.New("encoding " + name + " is not known")
	}
	return enc.NewDecoder().Reader(in), nil
}

func element(token xml.StartElement, line int) *Element {
	e := &Element{Name: token.Name.Local, Line: line}
	var elsewhere []Attribute
	for _, a := range token.Attr {
		switch name := a.Name.Local; {
		case a.Name.Space == "" && name != "xmlns":
			e.Attr = append(e.Attr, Attribute{name, a.Value})
		case name == "label" || name == "groupmode" || name == "href":
			elsewhere = append(elsewhere, Attribute{name, a.Value})
		}
	}
	e.Attr = append(e.Attr, elsewhere...) // behind: a plain href wins
	e.id, _ = e.get("id")
	class, _ := e.get("class")
	e.classes = strings.Fields(class)
	return e
}

// repeated gives the name of an attribute that is there twice, which XML does
// not allow, or "".
func repeated(attr []xml.Attr) string {
	seen := make(map[xml.Name]bool, len(attr))
	for _, a := range attr {
		if seen[a.Name] {
			return a.Name.Local
		}
		seen[a.Name] = true
	}
	return ""
}

// tellXML says what is wrong with the XML: cut short, an entity, or else.
func tellXML(err error, line int, r *trace.Report) {
	text := err.Error()
	switch {
	case errors.Is(err, io.EOF) || strings.Contains(text, "unexpected EOF"):
		r.Problem("truncated", r.Line(line), "the file was cut short: export or copy it again", "the drawing ends before </svg>")
	case strings.Contains(text, "entity"):
		r.Problem("entities", r.Line(line), xmlCure, "the drawing uses XML entities of its own, which are not read: %s", trace.Printable(text))
	default:
		r.Problem("syntax", r.Line(line), xmlCure, "this is not well-formed XML: %s", trace.Printable(text))
	}
}
