package output

import (
	"fmt"

	"stripwright/laminate"
	"stripwright/output/page"
	"stripwright/output/pdf"
	"stripwright/output/template"
)

// Templates draws plies ("P03" or "3") and pieces ("P03-S02") at 1:1, each as a
// file template-NAME-SIZE.pdf; those named twice, once. The errors are
// template.ErrUnknown, template.ErrSheets and coordinates that cannot be drawn.
func Templates(p laminate.Plan, planSHA256 string, wanted []string, size page.Size) ([]File, error) {
	if err := drawable(p); err != nil {
		return nil, err
	}
	var files []File
	done := map[string]bool{}
	for _, w := range wanted {
		name, err := template.Name(p, w)
		if err != nil {
			return nil, err
		}
		if done[name] {
			continue
		}
		done[name] = true
		pages, err := template.Sheets(p, name, planSHA256, size)
		if err != nil {
			return nil, err
		}
		data, err := pdf.Write(fmt.Sprintf("%s: template of %s", p.Title, name), pages)
		if err != nil {
			return nil, err
		}
		files = append(files, File{"template-" + safeWord(name) + "-" + size.Name + ".pdf", data})
	}
	return files, nil
}

// Papers are the sizes of paper by name.
var Papers = map[string]page.Size{page.A4.Name: page.A4, page.Letter.Name: page.Letter}
