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
	Line     int // of the file, where its tag ends
	text     string
	foreign  bool // of another name space than the drawing's: not drawn
}

// Attribute is one attribute, without its name space; label keeps its value
// whatever name space it stands in.
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
	var root *Element
	var space string
	var open []*Element
	for count := 0; ; {
		token, err := d.Token()
		line, _ := d.InputPos()
		if errors.Is(err, io.EOF) && root != nil && len(open) == 0 {
			return root
		}
		if err != nil {
			tellXML(err, line, r)
			return nil
		}
		switch token := token.(type) {
		case xml.Directive:
			if !declareEntities(string(token), d.Entity, bytes.Count(data, []byte("&"))) {
				r.Problem("entities", r.Line(line), xmlCure, "the drawing declares XML entities made of entities, or too many")
				return nil
			}
		case xml.StartElement:
			e := element(token, line)
			if count++; count > mostElements || len(open) > deepest {
				r.Problem("size", r.Line(line), "keep only the outline in the drawing",
					"the drawing holds more than %d elements, or they lie more than %d deep", mostElements, deepest)
				return nil
			}
			switch {
			case len(open) > 0:
				e.foreign = token.Name.Space != space && token.Name.Space != svgSpace
				parent := open[len(open)-1]
				parent.Children = append(parent.Children, e)
			case root != nil || e.Name != "svg":
				r.Problem("format", r.Line(line), "save the drawing as SVG or DXF", "the file is XML but no SVG: it begins with <%s>", trace.Printable(e.Name))
				return nil
			default:
				root, space = e, token.Name.Space
			}
			open = append(open, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if n := len(open); n > 0 && open[n-1].Name == "style" {
				open[n-1].text += string(token)
			}
		}
	}
}

// charset decodes the encoding that the XML declaration names.
func charset(name string, in io.Reader) (io.Reader, error) {
	enc, err := htmlindex.Get(name)
	if err != nil {
		return nil, errors.New("encoding " + name + " is not known")
	}
	return enc.NewDecoder().Reader(in), nil
}

func element(token xml.StartElement, line int) *Element {
	e := &Element{Name: token.Name.Local, Line: line}
	for _, a := range token.Attr {
		if a.Name.Space != "xmlns" && a.Name.Local != "xmlns" {
			e.Attr = append(e.Attr, Attribute{a.Name.Local, a.Value})
		}
	}
	return e
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
