"""The lists of points of harder.py: the angle plate of harder_svg, seen with y up."""
from harder_svg import AREA, H, PROBES, SAME, W

CORNERS = [(0, 300), (0, 0), (150, 0), (150, 200), (400, 200), (400, 300)]


def rows(form="{},{}", f=1, corners=CORNERS):
    return "".join(form.format(x * f, y * f) + "\n" for x, y in corners)


def cases():
    ok, warn, error = "ok", "warn", "error"
    yield "comma", ok, "commas, unit in the heading", "x_mm,y_mm\n" + rows(), SAME, "", ""
    yield "semicolon", ok, "semicolons, CRLF, a byte order mark", ("\ufeffX (mm); Y (mm)\n" + rows("{} ; {}")).replace("\n", "\r\n"), SAME, "", ""
    yield "tab", ok, "tabs, old line ends, closed by its first point, blank line at the end", ("x [mm]\ty [mm]\n" + rows("{}\t{}") + "0\t300\n\n").replace("\n", "\r"), SAME, "", ""
    yield "blanks", ok, "columns of blanks, exponents, comments", "# plate\nx mm  y mm\n" + rows("  {:e}   {:+.3f}"), SAME, "", ""
    yield "quoted", ok, "every column in quotes", '"x_cm","y_cm"\n' + rows('"{}","{}"', 0.1), SAME, "", ""
    yield "inches", ok, "inches after x and y", "x in,y in\n" + rows("{},{}", 1 / 25.4), SAME | {"tol": 1e-5}, "", ""
    yield "word_in", ok, "points in mm: the word in is no unit", "points in mm\n" + rows(), SAME, "", ""
    yield "spelt_out", ok, "millimetres spelt out", "x millimetres;y millimetres\n" + rows("{};{}"), SAME, "", ""
    yield "swapped", ok, "y before x", "Y_mm,X_mm\n" + rows("{1},{0}"), SAME, "", ""
    yield "clockwise", ok, "clockwise, a hole after a blank row of separators", "x_mm,y_mm\n" + rows(corners=CORNERS[::-1]) + ",\n20,20\n40,20\n40,40\n20,40\n", dict(area=AREA - 400, w=W, h=H, holes=1, probes=PROBES), "", ""
    yield "trailing", ok, "a separator at the end of each row", "x_mm;y_mm;\n" + rows("{};{};"), SAME, "", ""
    yield "unit_told", ok, "heading in mm, read in cm as stated", "x_mm,y_mm\n" + rows(), dict(area=100 * AREA, w=10 * W, h=10 * H), "--units cm", "heading says mm"
    yield "utf16", ok, "UTF-16 as spreadsheets write it", ("\ufeff" + "x_mm\ty_mm\n" + rows("{}\t{}")).encode("utf-16-le"), SAME, "", ""
    yield "no_unit", error, "no unit", "x,y\n" + rows(), SAME, "--units mm", "does not say its unit"
    yield "word_in_alone", error, "points in order: no unit", "points in order\n" + rows(), None, "", "does not say its unit"
    yield "two_units", error, "two units", "x_mm,y_in\n" + rows(), None, "", "in and mm"
    yield "x_twice", error, "x twice", "x1_mm,x2_mm\n" + rows(), None, "", "names x twice"
    yield "decimal_comma", error, "decimal commas with semicolons", "x_mm;y_mm\n" + rows("{:.1f};{:.1f}").replace(".", ","), None, "", ":2: number: "
    yield "decimal_comma_first", error, "a first row with decimal commas is no heading", rows("{:.1f};{:.1f}").replace(".", ","), None, "", ":1: number: "
    yield "decimal_comma_quoted", error, "decimal commas in quotes", "x_mm,y_mm\n" + '"0,5","1,5"\n' + rows(), None, "", "decimal commas"
    yield "decimal_comma_blank", error, "decimal commas parted by blanks", "x_mm y_mm\n0,5 1,5\n" + rows("{} {}"), None, "", "decimal commas"
    yield "thousands", error, "separators between thousands", "x_mm;y_mm\n1 000;2 000\n1 000;3 000\n2 000;3 000\n", None, "", "thousands"
    yield "three_columns", error, "three columns", "x_mm,y_mm,z_mm\n" + rows("{},{},0"), None, "", "3 columns"
    yield "one_column", error, "a row of one number", "x_mm,y_mm\n" + rows() + "7\n", None, "", "x alone"
    yield "nan", error, "NaN in the first row", "nan,0\n" + rows(), None, "--units mm", "1: number"
    yield "inf", error, "1e999", "x_mm,y_mm\n1e999,0\n" + rows(), None, "", "out of all reason"
    yield "hex", error, "a hexadecimal number", "x_mm,y_mm\n0x10,0\n" + rows(), None, "", "0x10"
    yield "crossing", error, "a figure of eight", "x_mm,y_mm\n0,0\n400,300\n400,0\n0,300\n", None, "", "(200, 150)"
    yield "flat", error, "all on a line", "x_mm,y_mm\n0,0\n100,100\n300,300\n", None, "", "encloses no area"
    yield "heading_alone", error, "a heading and nothing else", "x_mm,y_mm\n", None, "", "no outline"
