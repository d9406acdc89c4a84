package output

import (
	"runtime"
	"strconv"
	"strings"
	"sync"

	"stripwright/laminate"
	"stripwright/output/book"
	"stripwright/output/cutmap"
	"stripwright/output/dxf"
	"stripwright/output/label"
	"stripwright/output/layup"
	"stripwright/output/list"
	"stripwright/output/page"
	"stripwright/output/paper"
	"stripwright/output/pdf"
	"stripwright/output/rim"
	"stripwright/output/sheet"
	"stripwright/output/svg"
)

// File is one file by its name, without a folder.
type File struct {
	Name string
	Data []byte
}

// task makes one file, or several from one drawing.
type task struct {
	names []string
	make  func() ([][]byte, error)
}

// Files draws and lists a plan; planSHA256 is the hash of its plan.json in
// hexadecimal, whose beginning stands on every sheet.
//
// In this order: for each roll, or each table length of it,
// roll-FABRIC-WIDTH-NN.svg for people, -cut.svg and -mm.dxf for a cutter;
// pieces-mm.dxf; ply-NN.svg for each ply; labels-a4.pdf; rim-strips-a4.pdf, layup-sheets-a4.pdf and the same as -letter.pdf; joints.svg; thickness-map.svg where plies end
// within the part; cut-list.csv; order.csv, .txt and .json;
// left-over.csv; stack-report.txt; layup-book.html.
// Sheets of a plan that failed its check, or was not checked, are stamped. The
// only errors are coordinates that cannot be drawn.
func Files(p laminate.Plan, planSHA256 string) ([]File, error) {
	if err := drawable(p); err != nil {
		return nil, err
	}
	n := &names{taken: map[string]bool{}}
	tasks := rollTasks(p, planSHA256, n)
	tasks = append(tasks, task{[]string{n.file("pieces-mm", ".dxf")}, func() ([][]byte, error) {
		return one(dxf.WriteAs(cutmap.Pieces(p), p.DXF))
	}})
	tasks = append(tasks, plyTasks(p, planSHA256, n)...)
	tasks = append(tasks, zoneTasks(p, planSHA256, n)...)
	tasks = append(tasks,
		task{[]string{n.file("cut-list", ".csv")}, func() ([][]byte, error) { return one(list.CutList(p)) }},
		task{[]string{n.file("order", ".csv")}, func() ([][]byte, error) { return one(list.Order(p)) }},
		task{[]string{n.file("order", ".txt")}, func() ([][]byte, error) { return [][]byte{[]byte(list.OrderText(p))}, nil }},
		task{[]string{n.file("order", ".json")}, func() ([][]byte, error) { return one(list.OrderJSON(p)) }},
		task{[]string{n.file("left-over", ".csv")}, func() ([][]byte, error) { return one(list.LeftOver(p)) }},
		task{[]string{n.file("stack-report", ".txt")}, func() ([][]byte, error) { return one(list.StackReport(p)) }},
		task{[]string{n.file("layup-book", ".html")}, func() ([][]byte, error) { return one(book.Write(p, planSHA256)) }},
	)
	return run(tasks)
}

func one(data []byte, err error) ([][]byte, error) { return [][]byte{data}, err }

// rollTasks numbers the maps of each fabric and width.
func rollTasks(p laminate.Plan, sha string, n *names) []task {
	var tasks []task
	count := map[string]int{}
	for _, l := range cutmap.Lengths(p) {
		stem := "roll-" + safeWord(l.Roll.Fabric) + "-" + sheet.Number(l.Roll.WidthMM, 3)
		key := strings.ToLower(stem)
		count[key]++
		stem += "-" + padded(count[key], 2)
		tasks = append(tasks, task{
			[]string{n.file(stem, ".svg"), n.file(stem, "-cut.svg"), n.file(stem, "-mm.dxf")},
			func() ([][]byte, error) { return drawLength(p, l, sha) },
		})
	}
	return tasks
}

func drawLength(p laminate.Plan, l cutmap.Length, sha string) ([][]byte, error) {
	people, err := svg.Write(cutmap.People(p, l, sha))
	if err != nil {
		return nil, err
	}
	cutter := cutmap.Cutter(p, l, sha)
	cut, err := svg.Write(cutter)
	if err != nil {
		return nil, err
	}
	drawing, err := dxf.WriteAs(cutter, p.DXF)
	return [][]byte{people, cut, drawing}, err
}

// plyTasks are the sheets of all plies and of all joints; they share the
// measuring.
func plyTasks(p laminate.Plan, sha string, n *names) []task {
	measured := sync.OnceValue(func() []layup.PlyMeasures { return layup.Measure(p) })
	digits := max(2, len(strconv.Itoa(len(p.Plies))))
	var tasks []task
	for i, ply := range p.Plies {
		tasks = append(tasks, task{[]string{n.file("ply-"+padded(ply.Ply, digits), ".svg")}, func() ([][]byte, error) {
			return one(svg.Write(layup.Ply(p, i, measured()[i], sha)))
		}})
	}
	tasks = append(tasks, task{[]string{n.file("labels-a4", ".pdf")}, func() ([][]byte, error) {
		pages, err := label.Labels(p, sha)
		if err != nil {
			return nil, err
		}
		return one(pdf.Write(p.Title+": labels", pages))
	}})
	for _, size := range []page.Size{page.A4, page.Letter} {
		tasks = append(tasks, task{[]string{n.file("rim-strips-"+size.Name, ".pdf")}, func() ([][]byte, error) {
			return one(pdf.Write(p.Title+": rim strips", rim.Strips(p, layup.NetLine(p.Part), sha, size)))
		}})
		tasks = append(tasks, task{[]string{n.file("layup-sheets-"+size.Name, ".pdf")}, func() ([][]byte, error) {
			return one(pdf.Write(p.Title+": lay-up sheets", paper.Sheets(p, measured(), sha, size)))
		}})
	}
	return append(tasks, task{[]string{n.file("joints", ".svg")}, func() ([][]byte, error) {
		return one(svg.Write(layup.Joints(p, measured(), sha)))
	}})
}

func padded(n, digits int) string {
	text := strconv.Itoa(n)
	for len(text) < digits {
		text = "0" + text
	}
	return text
}

// run makes all files on all cores; their order and bytes do not depend on how
// many there are. Of several errors it gives the first in that order.
func run(tasks []task) ([]File, error) {
	made, errs := make([][][]byte, len(tasks)), make([]error, len(tasks))
	next := make(chan int)
	var group sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for i := range next {
				made[i], errs[i] = tasks[i].make()
			}
		})
	}
	for i := range tasks {
		next <- i
	}
	close(next)
	group.Wait()
	var files []File
	for i, t := range tasks {
		if errs[i] != nil {
			return nil, errs[i]
		}
		for j, name := range t.names {
			files = append(files, File{name, made[i][j]})
		}
	}
	return files, nil
}
