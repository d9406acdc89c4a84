package book

import "strconv"

// section is one page of the book: its id and what a way to it says.
type section struct {
	ID, Words string
	Listed    bool // in the contents, beside the plies
}

// turnView is the row of ways from one page to the page before and the next.
type turnView struct {
	Of         string
	Prev, Next *section
}

// sections lists the pages in their order.
func sections(v page) []section {
	out := []section{{"start", "Contents", false}}
	for _, p := range v.Plies {
		out = append(out, section{p.ID, "Ply " + strconv.Itoa(p.Ply), false})
	}
	for _, r := range v.Rolls {
		out = append(out, section{r.ID, r.Title, true})
	}
	return append(out, section{"through", "All joints", true}, section{"cut-list", "Cut list", true}, section{"order", "Order", true},
		section{"laminate", "The laminate", true}, section{"checks", "Checks", true}, section{"cautions", "Cautions", true})
}

// Turn gives the ways from a page of the book.
func (v page) Turn(id string) turnView {
	t := turnView{}
	for i, s := range v.Sections {
		if s.ID != id {
			continue
		}
		t.Of = s.Words
		if i > 0 {
			t.Prev = &v.Sections[i-1]
		}
		if i+1 < len(v.Sections) {
			t.Next = &v.Sections[i+1]
		}
	}
	return t
}
