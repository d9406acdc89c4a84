"""Holds stack-report.txt against plan.json, sharing no code with the program.

usage: stack.py FOLDER...       each with the two files; exit code 0 right, 1 not

Held: the layers from the tool up, with faces and hands; symmetric or not, layer
by layer; balanced or not; the coupling, summed pair by pair of layers over
cos^4 of the angle between them; fibre in each direction; what joints cut and
which run across the load; and every cure that is told: it is carried out on the
schedule, and the stack must then be symmetric, or balanced. Where it is said
that no face or turn mends the stack, all of them are tried (small stacks).
"""
import itertools
import json
import math
import re
import sys


def line(deg):
    """An angle in (-90, 90]."""
    a = round(deg % 180, 6)
    return a - 180 if a > 90 else a


class Cloth:
    def __init__(self, f, hand=1):
        self.name, self.gsm, self.hand = f["name"], f["weight_gsm"], hand
        self.f = f
        layers = f.get("layers") or []
        n = len(layers)
        self.form = f.get("form") or ["unidirectional", "unidirectional", "biaxial", "triaxial", "quadraxial"][min(n, 4)]
        if self.form == "woven" and n == 0:
            layers = [{"angle_deg": 0}, {"angle_deg": 90}]
        if n == 0 and self.form not in ("woven", "mat"):
            layers = [{"angle_deg": 0}]
        self.layers = [] if self.form == "mat" else [
            (hand * l["angle_deg"], l.get("weight_gsm") or self.gsm / len(layers)) for l in layers]

    def other(self):
        return Cloth(self.f, -self.hand)


class Ply:
    def __init__(self, number, cloth, angle, down):
        self.number, self.cloth, self.angle, self.down = number, cloth, angle, down

    def copy(self, **changed):
        p = Ply(self.number, self.cloth, self.angle, self.down)
        for k, v in changed.items():
            setattr(p, k, v)
        return p

    def layers(self, thick):
        """(identity, fibre by angle, thickness) from the tool up."""
        sign = -1 if self.down else 1
        lies = [(line(self.angle + sign * a), g) for a, g in self.cloth.layers]
        kind = self.cloth.f.get("fibre", "").lower()
        per = thick[self.cloth.name] / self.cloth.gsm
        if self.cloth.form in ("woven", "mat"):
            whole = tuple(sorted((a, round(g, 3)) for a, g in lies))
            return [((kind, self.cloth.form, whole, round(self.cloth.gsm, 3)), lies, self.cloth.gsm * per)]
        if not self.down:
            lies = lies[::-1]
        total = sum(g for _, g in lies)
        return [((kind, "straight", a, round(g, 3)), [(a, g)], self.cloth.gsm * per * g / total) for a, g in lies]


class Core:
    def __init__(self, c):
        self.name, self.mm, self.number = c["name"], c["thickness_mm"], None

    def copy(self):
        return self

    def layers(self, thick):
        return [(("core", self.name, self.mm), None, self.mm)]


def layers_of(plies, thick):
    return [l for p in plies for l in p.layers(thick)]


def mirror(layers):
    ids = [l[0] for l in layers]
    return ids == ids[::-1]


def balanced(layers):
    lean = {}
    for ident, lies, _ in layers:
        for a, g in lies or []:
            if a not in (0, 90):
                lean[ident[0], abs(a)] = lean.get((ident[0], abs(a)), 0) + math.copysign(g, a)
    return all(abs(v) < 1e-3 for v in lean.values())


def coupling(layers):
    z = -sum(l[2] for l in layers) / 2
    fibres = []
    for _, lies, t in layers:
        mid = z + t / 2
        z += t
        if lies is None:
            continue
        total = sum(g for _, g in lies)
        for a, g in lies or [(None, 1)]:
            w = t * g / total if lies else t
            fibres.append((a, w, w * mid, w * (mid * mid + t * t / 12)))
    def norm(i):
        s = 0
        for f in fibres:
            for g in fibres:
                p = 3 / 8 if f[0] is None or g[0] is None else math.cos(math.radians(f[0] - g[0])) ** 4
                s += f[i] * g[i] * p
        return math.sqrt(max(s, 0))
    return norm(2) / math.sqrt(norm(1) * norm(3))


def numbers(text):
    out = []
    for a, b in re.findall(r"(\d+)(?:-(\d+))?", text):
        out += range(int(a), int(b or a) + 1)
    return out


LIST = r"(?:ply|plies) (\d[\d, and-]*?)"
STEPS = [
    ("exchange", r"exchange plies (\d+|core [^,;]+?) and (\d+|core [^,;]+)"),
    ("move", r"move ply (\d+) (?:onto ply (\d+)|to the tool)"),
    ("order", r"lay the plies in this order from the tool up: ((?:\d+|core [^,;]+)(?:, (?:\d+|core [^,;]+))*)"),
    ("double", r"lay all plies once more on top, in reverse order(, each on its other face)?"),
    ("cut", rf"cut {LIST} from the opposite-hand cloth of (.+?) \([^)]*\) and lay (?:it|them) face (up|down) at (-?[\d.]+)°"),
    ("add", r"(?:add one ply|one) of (the opposite-hand cloth of )?(.+?) at (-?[\d.]+)°(?:, face (up|down),)? (?:after ply (\d+|core .+?)|on the tool, before ply (\d+))(?= and one|[,;]|$)"),
    ("turn", rf"(?:turn {LIST} by a quarter, to|lay {LIST} at) (-?[\d.]+)°(?:, and lay (?:it|them) face (up|down))?"),
    ("face", rf"lay {LIST} face (up|down)"),
]


class Report:
    def __init__(self, folder):
        with open(f"{folder}/plan.json") as f:
            self.plan = json.load(f)
        with open(f"{folder}/stack-report.txt", encoding="utf-8") as f:
            text = f.read()
        self.faults, self.held, self.cures, self.steps = [], 0, 0, []
        self.cloths = {f["name"]: Cloth(f) for f in self.plan["fabrics"]}
        self.sections = {}
        heads = ["The stack", "What would mend it", "Fibre in each direction", "Lamination parameters", "Layers from the tool up",
                 "Zones", "Skins of the sandwich", "What the joints cut", "How this was judged", "Cloth in its resin"]
        at = sorted((m.start(), h) for h in heads for m in [re.search(rf"(?m)^{h}$", text)] if m)
        for (start, h), (end, _) in zip(at, at[1:] + [(len(text), "")]):
            self.sections[h] = text[start + len(h):end]
        self.thick = self.thicknesses()

    def words(self, heading):
        return " ".join(self.sections.get(heading, "").split())

    def rows(self, heading):
        out = []
        for l in self.sections.get(heading, "").splitlines():
            cells = re.split(r" {2,}", l.strip())
            if len(cells) > 2:
                out.append(cells)
        return out[1:]

    def true(self, what, ok):
        self.held += 1
        if not ok:
            self.faults.append(what)

    def thicknesses(self):
        """mm of a ply of each cloth, summed from the table of layers, else by weight."""
        out = {n: c.gsm / 1000 for n, c in self.cloths.items()}
        for name in self.cloths:
            of = {}
            for r in self.rows("Layers from the tool up"):
                if r[2] == name:
                    of.setdefault(r[1], 0)
                    of[r[1]] += float(r[6].split()[0])
            if of:
                out[name] = max(of.values())
        return out

    def whole(self):
        out, cores = [], [c for c in self.plan.get("cores") or [] if not c.get("outline")]
        for p in self.plan["plies"]:
            while cores and cores[0]["after_ply"] < p["ply"]:
                out.append(Core(cores.pop(0)))
            if not p.get("outline"):
                out.append(Ply(p["ply"], self.cloths[p["fabric"]], p["angle_deg"], p["face"] == "down"))
        return out + [Core(c) for c in cores]

    def table(self, layers, plies):
        rows = self.rows("Layers from the tool up")
        self.true(f"{len(rows)} layers are listed, {len(layers)} lie there", len(rows) == len(layers))
        owners = [p for p in plies for _ in p.layers(self.thick)]
        n = len(layers)
        for i, (r, (ident, lies, _), p) in enumerate(zip(rows, layers, owners)):
            self.true(f"layer {i + 1} is said to be of ply {r[1]}", r[1] == ("core" if p.number is None else str(p.number)))
            if lies:
                said = sorted(line(float(a)) for a in re.findall(r"(-?[\d.]+)°", r[4]))
                self.true(f"layer {i + 1} is said to lie at {said}, it lies at {lies}", said == sorted(round(a, 3) for a, _ in lies))
            self.true(f"layer {i + 1}: mirror {r[8]}", (r[8] == "yes") == (ident == layers[n - 1 - i][0]))

    def verdict(self, layers):
        words = self.words("The stack")
        is_mirror, c = mirror(layers), coupling(layers)
        self.true(f"symmetric: {is_mirror}", ("Symmetric: layer by layer" in words) == is_mirror)
        if not is_mirror:
            said = re.search(r"it couples by ([\d.]+)", words)
            if said:
                self.true(f"coupling {said[1]}, summed {c:.4f}", abs(float(said[1]) - c) < 0.002 + 0.01 * c)
                self.true(f"close to symmetric at {c:.4f}", ("Close to symmetric" in words) == (c <= 0.0866) or abs(c - 0.0866) < 0.002)
            else:
                self.true(f"said not to couple, summed {c:.6f}", "it does not couple (B = 0)" in words and c < 0.004 or "would not couple" in words)
        self.true(f"balanced: {balanced(layers)}", ("Balanced: as much fibre" in words) == balanced(layers))

    def shares(self, layers):
        all_fibre, by = 0, {}
        for ident, lies, _ in layers:
            if lies is None:
                continue
            if not lies:
                by["none"] = by.get("none", 0) + ident[3]
                all_fibre += ident[3]
            for a, g in lies:
                by[a], all_fibre = by.get(a, 0) + g, all_fibre + g
        rows = self.rows("Fibre in each direction")
        self.true("directions listed", len(rows) == len(by))
        for r in rows:
            a = "none" if r[0].startswith("none") else line(float(r[0].rstrip("°")))
            got = float(r[2].split()[0]) / 100
            self.true(f"share at {r[0]}: {got}", abs(got - by.get(a, -1) / all_fibre) < 0.00051)

    def joints(self):
        cut = {}
        for c in self.cloths.values():
            total = sum(g for _, g in c.layers) or 1
            for name, at in (("side", 0), ("end", 90)):
                gone = sum(g for a, g in c.layers if abs(line(a - at)) > 1)
                cut[c.name, name] = 1 if c.form == "mat" else gone / total
        for r in self.rows("What the joints cut"):
            for name, cell in (("side", r[-2]), ("end", r[-1])):
                self.true(f"{name} joints of {r[0]}: {cell}", abs(float(cell.split()[0]) / 100 - cut[r[0], name]) < 0.00051)
        load, named = self.plan["part"].get("load_deg"), set()
        if load is None:
            return
        for p in self.plan["plies"]:
            for kind in {j["kind"] for j in p["joints"]}:
                joint = p["angle_deg"] + (90 if kind == "end" else 0)
                c, sign = self.cloths[p["fabric"]], -1 if p["face"] == "down" else 1
                carrying = c.form == "mat" or any(
                    abs(line(p["angle_deg"] + sign * a - joint)) > 1 and abs(line(p["angle_deg"] + sign * a - load)) <= 45 for a, _ in c.layers)
                if abs(line(joint - load)) > 15 and carrying:
                    named.add(p["ply"])
        words = self.words("What the joints cut")
        said = set()
        for m in re.findall(r"(?:ply|plies) ([\d, and-]+) \((?:side|end) joints", words):
            said.update(numbers(m))
        self.true(f"joints across the load in plies {sorted(said)}, found in {sorted(named)}", said == named)
        warned = [c["text"] for c in self.plan["checks"] if c["rule"] == "fibre cut"][0]
        self.true("the check warns of the same", warned.startswith("WARNING") == bool(named))

    def carried_out(self, plies, words):
        """The plies after a cure; what cannot be read is a fault."""
        plies, rest = list(plies), words
        where = lambda n: next(i for i, p in enumerate(plies) if (p.number is not None and str(p.number) == n) or "core " + getattr(p, "name", "") == n)
        while rest.strip(" ,;"):
            rest = re.sub(r"^[ ,;]*(and )?", "", rest)
            for step, pattern in STEPS:
                m = re.match(pattern, rest)
                if m:
                    break
            else:
                raise ValueError(f"cannot read the cure {rest!r}")
            rest = rest[m.end():]
            g = m.groups()
            self.steps.append(step)
            if step == "exchange":
                a, b = where(g[0]), where(g[1])
                plies[a], plies[b] = plies[b], plies[a]
            elif step == "double":
                plies += [p if p.number is None or not g[0] else p.copy(down=not p.down) for p in reversed(plies)]
            elif step == "move":
                p = plies.pop(where(g[0]))
                plies.insert(where(g[1]) + 1 if g[1] else 0, p)
            elif step == "order":
                plies = [plies[where(n)] for n in g[0].split(", ")]
            elif step == "add":
                c = self.cloths[g[1]]
                new = Ply(-1, c.other() if g[0] else c, float(g[2]), g[3] == "down")
                plies.insert(where(g[4]) + 1 if g[4] else where(g[5]), new)
            else:
                listed = numbers(g[0] or g[1] or "")
                for i, p in enumerate(plies):
                    if p.number not in listed:
                        continue
                    if step == "cut":
                        plies[i] = p.copy(cloth=p.cloth.other(), down=g[2] == "down", angle=float(g[3]))
                    elif step == "face":
                        plies[i] = p.copy(down=g[1] == "down")
                    else:
                        plies[i] = p.copy(angle=float(g[2]), down=p.down if g[3] is None else g[3] == "down")
        return plies

    def mending(self, plies):
        words = self.words("What would mend it")
        for opening, text in re.findall(r"(To make it symmetric|Or|It needs the opposite-hand cloth|Doubled it would be symmetric|To balance it): (.*?)(?: \(then[^)]*\))?\.(?= |$)", words):
            self.cures += 1
            try:
                then = layers_of(self.carried_out(plies, text), self.thick)
            except ValueError as e:
                self.true(str(e), False)
                continue
            if opening == "To balance it":
                self.true(f"not balanced by: {text}", balanced(then) and (mirror(then) or not mirror(layers_of(plies, self.thick))))
            else:
                self.true(f"not symmetric by: {text}", mirror(then))
        if not re.search(r"Nothing (of this cloth|that was tried) mends it", words) or len(plies) > 7:
            return
        ways = []
        for p in plies:
            quarters = (0, 90) if p.number is not None and len(p.cloth.layers) > 1 else (0,)
            ways.append([p] if p.number is None else [p.copy(angle=p.angle + q, down=d) for q in quarters for d in (False, True)])
        mends = any(mirror(layers_of(way, self.thick)) for way in itertools.product(*ways))
        self.true("said that no turn or flip mends it, and one does", not mends)

    def judge(self):
        plies = self.whole()
        layers = layers_of(plies, self.thick)
        self.table(layers, plies)
        self.verdict(layers)
        self.shares(layers)
        self.joints()
        self.mending(plies)


def main():
    bad = False
    for folder in sys.argv[1:]:
        r = Report(folder)
        r.judge()
        print(f"{folder}: {r.held} statements held, {r.cures} cures carried out, {len(r.faults)} faults")
        for f in r.faults[:10]:
            print("  " + f)
        bad |= bool(r.faults) or r.held < 10
    sys.exit(bad or len(sys.argv) < 2)


if __name__ == "__main__":
    main()
