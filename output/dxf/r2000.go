package dxf

import (
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/output/sheet"
)

// Handles that other parts of a file of release 2000 refer to.
const (
	modelSpace = 0x1f
	paperSpace = 0x1e
	rootHandle = 0xc
	groupList  = 0xd
	firstFree  = 0x100     // entities and table entries count from here
	handleSeed = 0x7000000 // above any handle of a file
)

func hex(handle int) string { return strconv.FormatInt(int64(handle), 16) }

// owned gives the next handle and names the owner.
func (w *writer) owned(owner int) {
	w.handle = max(w.handle+1, firstFree)
	w.pair(5, hex(w.handle))
	w.pair(330, hex(owner))
}

func (w *writer) header2000(s sheet.Scene) {
	w.section("HEADER")
	w.pair(9, "$ACADVER")
	w.pair(1, "AC1015")
	w.pair(9, "$HANDSEED")
	w.pair(5, hex(handleSeed))
	w.measures(s)
}

// table2000 begins a table of so many entries.
func (w *writer) table2000(name string, handle, entries int) {
	w.pair(0, "TABLE")
	w.pair(2, name)
	w.pair(5, hex(handle))
	w.pair(330, "0")
	w.pair(100, "AcDbSymbolTable")
	w.pair(70, strconv.Itoa(entries))
}

// entry2000 begins an entry of a table.
func (w *writer) entry2000(kind, class, name string, table int) {
	w.pair(0, kind)
	w.owned(table)
	w.pair(100, "AcDbSymbolTableRecord")
	w.pair(100, class)
	w.pair(2, name)
}

func (w *writer) tables2000(s sheet.Scene) {
	w.section("TABLES")
	w.table2000("LTYPE", 0x5, 3)
	for _, name := range []string{"ByBlock", "ByLayer", "Continuous"} {
		w.entry2000("LTYPE", "AcDbLinetypeTableRecord", name, 0x5)
		w.pair(70, "0")
		w.pair(3, "")
		w.pair(72, "65")
		w.pair(73, "0")
		w.number(40, 0)
	}
	w.pair(0, "ENDTAB")
	names := append([]string{"0"}, w.layerNames(s)...)
	w.table2000("LAYER", 0x2, len(names))
	for i, name := range names {
		w.entry2000("LAYER", "AcDbLayerTableRecord", name, 0x2)
		w.pair(70, "0")
		w.pair(62, strconv.Itoa(1+(i+6)%7))
		w.pair(6, "Continuous")
	}
	w.pair(0, "ENDTAB")
	w.table2000("STYLE", 0x3, 1)
	w.entry2000("STYLE", "AcDbTextStyleTableRecord", "Standard", 0x3)
	w.letters()
	w.table2000("APPID", 0x9, 1)
	w.entry2000("APPID", "AcDbRegAppTableRecord", "ACAD", 0x9)
	w.pair(70, "0")
	w.pair(0, "ENDTAB")
	w.table2000("BLOCK_RECORD", 0x1, 2)
	for _, space := range spaces {
		w.pair(0, "BLOCK_RECORD")
		w.pair(5, hex(space.handle))
		w.pair(330, "1")
		w.pair(100, "AcDbSymbolTableRecord")
		w.pair(100, "AcDbBlockTableRecord")
		w.pair(2, space.name)
	}
	w.pair(0, "ENDTAB")
	w.pair(0, "ENDSEC")
}

// spaces are the two blocks that every file of release 2000 has.
var spaces = [...]struct {
	name   string
	handle int
}{{"*Model_Space", modelSpace}, {"*Paper_Space", paperSpace}}

func (w *writer) blocks2000() {
	w.section("BLOCKS")
	for _, space := range spaces {
		w.pair(0, "BLOCK")
		w.owned(space.handle)
		w.pair(100, "AcDbEntity")
		w.pair(8, "0")
		w.pair(100, "AcDbBlockBegin")
		w.pair(2, space.name)
		w.pair(70, "0")
		w.point(10, orb.Point{})
		w.number(30, 0)
		w.pair(3, space.name)
		w.pair(1, "")
		w.pair(0, "ENDBLK")
		w.owned(space.handle)
		w.pair(100, "AcDbEntity")
		w.pair(8, "0")
		w.pair(100, "AcDbBlockEnd")
	}
	w.pair(0, "ENDSEC")
}

// objects2000 writes the dictionary that a file must have.
func (w *writer) objects2000() {
	w.section("OBJECTS")
	w.pair(0, "DICTIONARY")
	w.pair(5, hex(rootHandle))
	w.pair(330, "0")
	w.pair(100, "AcDbDictionary")
	w.pair(281, "1")
	w.pair(3, "ACAD_GROUP")
	w.pair(350, hex(groupList))
	w.pair(0, "DICTIONARY")
	w.pair(5, hex(groupList))
	w.pair(330, hex(rootHandle))
	w.pair(100, "AcDbDictionary")
	w.pair(281, "1")
	w.pair(0, "ENDSEC")
}

// polyline2000 writes a line of three points or more as one entity.
func (w *writer) polyline2000(layer string, l sheet.Line) {
	w.entity("LWPOLYLINE", layer, "AcDbPolyline")
	w.pair(90, strconv.Itoa(len(l.Points)))
	flag := "0"
	if l.Closed {
		flag = "1"
	}
	w.pair(70, flag)
	for _, p := range l.Points {
		w.point(10, p)
	}
}
