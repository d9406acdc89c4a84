package book

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"html/template"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/sheet"
)

//go:embed page.html
var pageText string

//go:embed book.css
var styleText string

//go:embed book.js
var scriptText string

// earlyText keeps a browser from laying out all pages before the script shows
// one.
const earlyText = `document.documentElement.classList.add("script","early")`

var pageTemplate = template.Must(template.New("page").Parse(pageText))

// figure is a drawing with words below it.
type figure struct {
	SVG   template.HTML
	Words string
}

// book is a plan while its book is written.
type book struct {
	plan     laminate.Plan
	sha      string
	measured []layup.PlyMeasures
	ground   ground
	cuts     map[string]cutRow // by id of the piece
	rows     []cutRow
}

// page is everything that the template shows.
type page struct {
	Policy        string
	Style, Script template.HTML
	Early         template.HTML // script that runs before anything is laid out
	Shared        template.HTML
	Title         string
	SHA           string
	Start         startView
	Plies         []plyView
	Rolls         []rollView
	Through       throughView
	CutLists      []cutList
	Order         orderView
	Laminate      laminateView
	Checks        []checkView
	Notes         []string
	Warnings      []string
	Cautions      [][2]string
	Stamp         *stampView
	Foot          string    // what every page says
	Sections      []section // in the order of the pages
}

// stampView says on every page why a plan may not be cut.
type stampView struct {
	Words  string
	Faults []string
}

// Write gives the book of a plan; planSHA256 is the hash of its plan.json in
// hexadecimal. Coordinates must be drawable. An error is a fault of the template.
func Write(p laminate.Plan, planSHA256 string) ([]byte, error) {
	b := &book{plan: p, sha: planSHA256, measured: layup.Measure(p), ground: newGround(p)}
	if err := b.readCuts(); err != nil {
		return nil, err
	}
	v := b.page()
	style, script := "<style>"+styleText+"</style>", "<script>"+scriptText+"</script>"
	v.Style, v.Script, v.Early = template.HTML(style), template.HTML(script), "<script>"+earlyText+"</script>"
	v.Policy = "default-src 'none'; style-src '" + hash(styleText) + "'; script-src '" + hash(earlyText) + "' '" + hash(scriptText) + "'; base-uri 'none'; form-action 'none'"
	var out bytes.Buffer
	if err := pageTemplate.Execute(&out, v); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// hash names a text as a content policy does.
func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

func (b *book) page() page {
	p := b.plan
	v := page{
		Title: shown(p.Title), SHA: b.sha, Shared: template.HTML(shared(p, b.ground)),
		Start: b.start(), Rolls: b.rollViews(), Through: b.through(), CutLists: b.cutLists(),
		Order: b.order(), Laminate: b.laminate(), Checks: b.checks(), Notes: b.notes(),
		Warnings: warnings(p), Cautions: sheet.Cautions,
	}
	for i := range p.Plies {
		v.Plies = append(v.Plies, b.plyView(i))
	}
	if faults := sheet.Faults(p.Checks); len(faults) > 0 {
		v.Stamp = &stampView{sheet.DoNotCut, faults}
	}
	v.Foot = b.foot()
	v.Sections = sections(v)
	return v
}
