"""Writes the drawings of testdata/drawings/harder with their expected values: the
harder kinds of what testdata/drawings holds. Values come from formulas by hand;
those of random or bent shapes from shapely, flattened finely.

    harder.py FOLDER

The files are kept in the repository; run this only to change them."""
import json
import os
import sys

import harder_csv
import harder_dxf
import harder_svg


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    folder, listed = sys.argv[1], []
    os.makedirs(folder, exist_ok=True)
    for kind, module in (("dxf", harder_dxf), ("svg", harder_svg), ("csv", harder_csv)):
        for name, verdict, about, text, values, options, says in module.cases():
            file = f"{kind}_{name}.{kind}"
            with open(os.path.join(folder, file), "wb") as f:
                f.write(text if isinstance(text, bytes) else text.encode())
            case = {"file": file, "verdict": verdict, "about": about}
            if values:
                values = {"outer": 1, "holes": 0} | values
                for key in ("area", "w", "h"):
                    values[key] = round(values[key], 4)
                case |= values
            if options:
                case["options"] = options
            if says:
                case["says"] = says
            listed.append(case)
    names = [c["file"] for c in listed]
    assert len(set(names)) == len(names)
    for old in os.listdir(folder):
        if old not in names and old != "expected.json":
            os.remove(os.path.join(folder, old))
    with open(os.path.join(folder, "expected.json"), "w", encoding="utf-8") as f:
        f.write("[\n" + ",\n".join(" " + json.dumps(c, ensure_ascii=False) for c in listed) + "\n]\n")
    print(len(listed), "drawings")


if __name__ == "__main__":
    main()
