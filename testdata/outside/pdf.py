"""Reads the PDF files of a folder with qpdf and poppler and holds them against
plan.json.

usage: pdf.py FOLDER...         exit code 0 when all agree, 1 when not
       pdf.py FOLDER/FILE.pdf   that file alone

Held: qpdf finds no fault; every page has the size of its paper, and the file
asks not to be scaled and bears no date; on the lay-up sheets each strip stands
exactly once in the section of its ply, and each joint is found again from the two
edge distances printed for it; labels come in cutting order, with the same id as a
code and in letters; rim strips and templates measure what they must (pdf_rim.py,
pdf_template.py).
"""
import glob
import json
import os
import re
import subprocess
import sys
import tempfile
from fractions import Fraction

from PIL import Image

import pdf_rim
import pdf_template
from pdf_words import pages, edge_of, joint_ends

PAPER = {"a4": (595.2756, 841.8898), "letter": (612.0, 792.0)}  # points
MARKED = 0.25 + 0.01  # mm: distances are printed to 0.5 mm,
IN_INCHES = 25.4 / 64 + 0.01  # or to 1/32 in


def check_file(path, faults):
    found = subprocess.run(["qpdf", "--check", path], capture_output=True, text=True)
    if found.returncode != 0 or "No syntax or stream encoding errors found" not in found.stdout:
        faults.append(f"{path}: qpdf: {(found.stderr or found.stdout).strip().splitlines()[-1]}")
        return False
    info = subprocess.run(["pdfinfo", "-f", "1", "-l", "-1", path], check=True, capture_output=True, text=True).stdout
    size = PAPER["letter" if path.endswith("-letter.pdf") else "a4"]
    for w, h in re.findall(r"size: +([\d.]+) x ([\d.]+) pts", info):
        if sorted((float(w), float(h))) != sorted(round(v, 3) if v % 1 else v for v in size) and \
                max(abs(a - b) for a, b in zip(sorted((float(w), float(h))), sorted(size))) > 0.01:
            faults.append(f"{path}: a page of {w} x {h} points")
            break
    if "CreationDate" in info or "ModDate" in info:
        faults.append(f"{path}: bears a date")
    with open(path, "rb") as f:
        if not re.search(rb"/PrintScaling ?/None", f.read()):
            faults.append(f"{path}: lets the printer scale it")
    fonts = subprocess.run(["pdffonts", path], check=True, capture_output=True, text=True).stdout.splitlines()[2:]
    if not fonts or any(re.search(r"(\w+) +(\w+) +(\w+) +\d+ +\d+$", f).groups() != ("yes", "yes", "yes") for f in fonts):
        faults.append(f"{path}: a font is not embedded, or cannot be read back: {fonts}")
    return True


def sections(path):
    """The lines of each ply's pages, by its number."""
    found = {}
    for lines in pages(path):
        words = " ".join(lines[:6])
        ply = re.search(r"PLY (\d+) OF \d+ FROM THE TOOL", words)
        if ply:
            found.setdefault(int(ply.group(1)), []).extend(lines)
    return found


LENGTH = r"(?:([\d/ ]+) in )?([\d.]+) mm"
END = LENGTH + r" from (\w)(?:, edge (\w)-(\w)| (anticlockwise|clockwise))"
ROW = re.compile(r"^J(\d+) " + END + " " + END + r" (?:none|(?:[\d/ ]+ in \()?[\d.]+ mm\)? ply \d+)$")


def check_sheets(path, plan, faults):
    found = sections(path)
    edge = edge_of(plan)
    for ply in plan["plies"]:
        lines = found.get(ply["ply"], [])
        text = " ".join(lines)
        ids = re.findall(r"\bP\d+-S\d+\b", text)
        if sorted(ids) != sorted(s["id"] for s in ply["strips"]):
            faults.append(f"{path}: ply {ply['ply']}: strips {ids}")
        for word in (f"FACE {ply['face'].upper()}", ply["fabric"], "SEEN FROM THE LAYING SIDE"):
            if word not in text:
                faults.append(f"{path}: ply {ply['ply']}: {word} is not told")
        rows = {int(m.group(1)): m for m in map(ROW.match, lines) if m}
        for n, joint in enumerate(ply["joints"], 1):
            ends = joint_ends(edge, joint)
            if ends is None:
                continue  # in the trim
            if n not in rows:
                faults.append(f"{path}: ply {ply['ply']}: joint J{n} has no distances")
                continue
            for end, (inches, *printed) in zip(ends, (rows[n].groups()[1:7], rows[n].groups()[7:13])):
                off = edge.distance(edge.at(*printed), end)
                if off > MARKED:
                    faults.append(f"{path}: ply {ply['ply']}: J{n}: {' '.join(filter(None, printed))} is {off:.2f} mm off")
                if inches:
                    off = edge.distance(edge.at(25.4 * sum(map(Fraction, inches.split())), *printed[1:]), end)
                    if off > IN_INCHES:
                        faults.append(f"{path}: ply {ply['ply']}: J{n}: {inches} in is {off:.2f} mm off")
        if len(rows) > len(ply["joints"]):
            faults.append(f"{path}: ply {ply['ply']}: {len(rows)} rows of joints")


def check_labels(path, plan, faults):
    """Each label on its own, as it is read: 3 by 8 on a sheet."""
    wanted = [p["id"] for roll in plan["rolls"] for p in sorted(roll["pieces"], key=lambda p: p["cut_order"])]
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run(["pdftoppm", "-r", "200", "-gray", path, f"{folder}/page"], check=True)
        got = []
        for name in sorted(glob.glob(f"{folder}/page*.pgm")):
            picture = Image.open(name)
            for k in range(24):
                w, h = picture.width / 3, picture.height / 8
                box = [round(v) for v in (k % 3 * w, k // 3 * h, (k % 3 + 1) * w, (k // 3 + 1) * h)]
                one = picture.crop(box)
                if one.getextrema()[0] > 200:
                    continue
                one.save(f"{folder}/one.png")
                read = subprocess.run(["zbarimg", "-q", "--raw", f"{folder}/one.png"], capture_output=True, text=True)
                got.append(read.stdout.strip())
    if got != wanted:
        wrong = next((i for i, (a, b) in enumerate(zip(got, wanted)) if a != b), min(len(got), len(wanted)))
        faults.append(f"{path}: label {wrong + 1} of {len(got)} reads {got[wrong:wrong + 1]}, {len(wanted)} pieces, {wanted[wrong:wrong + 1]}")
    lettered = [line for lines in pages(path) for line in lines]
    lettered = [i for line in lettered for i in re.findall(r"\bP\d+-S\d+\b", line)]
    if sorted(lettered) != sorted(wanted):
        faults.append(f"{path}: the ids in letters are not those of the pieces")


def main():
    faults, count = [], 0
    for folder in sys.argv[1:]:
        alone = [folder] if folder.endswith(".pdf") else None
        folder = os.path.dirname(folder) if alone else folder
        with open(os.path.join(folder, "plan.json"), encoding="utf-8") as f:
            plan = json.load(f)
        paths = alone or sorted(glob.glob(os.path.join(folder, "*.pdf")))
        for path in paths:
            if not check_file(path, faults):
                continue
            name = os.path.basename(path)
            if name.startswith("layup-sheets"):
                check_sheets(path, plan, faults)
            elif name.startswith("labels"):
                check_labels(path, plan, faults)
            elif name.startswith("rim-strips"):
                pdf_rim.check(path, plan, faults)
            elif name.startswith("template-"):
                pdf_template.check(path, plan, faults)
            count += 1
        if not alone and len(paths) < 5:
            faults.append(f"{folder}: {len(paths)} PDF files")
    for fault in faults:
        print(fault)
    print(f"{count} PDF files, {len(faults)} faults")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
