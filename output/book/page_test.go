package book

import (
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strings"
	"testing"
)

// element is a part of a page, read by a reader that knows nothing of how the page
// is made.
type element struct {
	tag      string
	attr     map[string]string
	children []*element
	words    string // of a piece of text, tag ""
}

var notText = regexp.MustCompile(`(?s)<(style|script)>.*?</(style|script)>`)

// readPage reads a page as elements; style and script are left out.
func readPage(t *testing.T, data []byte) *element {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(string(notText.ReplaceAll(data, nil))))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	root := &element{}
	open := []*element{root}
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return root
		}
		if err != nil {
			t.Fatalf("the page cannot be read: %v", err)
		}
		last := open[len(open)-1]
		switch x := token.(type) {
		case xml.StartElement:
			e := &element{tag: x.Name.Local, attr: map[string]string{}}
			for _, a := range x.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			last.children = append(last.children, e)
			open = append(open, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			last.children = append(last.children, &element{words: string(x)})
		}
	}
}

// text gives the words of an element and all within, blanks made single.
func (e *element) text() string {
	var b strings.Builder
	e.each(func(c *element) {
		b.WriteString(c.words)
		b.WriteString(" ")
	})
	return strings.Join(strings.Fields(b.String()), " ")
}

func (e *element) each(do func(*element)) {
	do(e)
	for _, c := range e.children {
		c.each(do)
	}
}

// all lists the elements of a tag, and of a class where one is given.
func (e *element) all(tag, class string) []*element {
	var out []*element
	e.each(func(c *element) {
		if c.tag == tag && (class == "" || strings.Contains(" "+c.attr["class"]+" ", " "+class+" ")) {
			out = append(out, c)
		}
	})
	return out
}

// id finds the element of an id.
func (e *element) id(t *testing.T, id string) *element {
	t.Helper()
	var out *element
	e.each(func(c *element) {
		if c.attr["id"] == id {
			out = c
		}
	})
	if out == nil {
		t.Fatalf("the page has no %q", id)
	}
	return out
}

// rows gives the rows of the body of a table, cell by cell.
func (e *element) rows() [][]*element {
	var out [][]*element
	for _, body := range e.all("tbody", "") {
		for _, tr := range body.all("tr", "") {
			var cells []*element
			for _, c := range tr.children {
				if c.tag == "td" || c.tag == "th" {
					cells = append(cells, c)
				}
			}
			out = append(out, cells)
		}
	}
	return out
}
