"""A small right-angled job as an integer programme: the phase of every ply on a
grid, and the strips of all plies cut and packed on the rolls at once. Written
as text in the CPLEX LP format, which many solvers read.

    y     1 where a ply has a phase
    n     narrow strips of a size, of all plies of a fabric
    x     narrow strips of a size that begin at a step across the roll, in lanes
    z     1 where a narrow strip of a size has its corner at a place of the roll
    c     1 where a stretch of the roll holds narrow strips
    t     units of roll in all

A strip as wide as the roll takes a length of its own: nothing lies beside it.
The others may be pushed towards the roll's end until each lies behind another,
so they begin at sums of lengths; across the roll they are pushed likewise, to
sums of heights, which lie on the grid."""
from collections import Counter, defaultdict
from itertools import product
from math import gcd


class Model:
    """Rows of a minimisation; all figures are whole."""

    def __init__(self):
        self.cost, self.rows, self.whole, self.binary = [], [], [], []

    def row(self, terms, sense, right):
        self.rows.append((list(terms), sense, right))

    def text(self):
        lines = ["Minimize", " cost: " + joined(self.cost), "Subject To"]
        lines += [f" r{k}: {joined(terms)} {sense} {right}" for k, (terms, sense, right) in enumerate(self.rows)]
        for head, names in (("Generals", self.whole), ("Binaries", self.binary)):
            if names:
                lines += [head] + [" " + name for name in names]
        return "\n".join(lines + ["End", ""])


def joined(terms):
    """Terms of a row, a few to a line: readers take no long ones."""
    words = [f"{'-' if k < 0 else '+'} {abs(k)} {name}" for k, name in terms]
    return "\n  ".join(" ".join(words[i:i + 6]) for i in range(0, len(words), 6))


def model(job, together=None):
    """The programme of a job with phases on the grid of its step. Its optimum is
    the roll of all fabrics in units (see unit), with a cutting gap more than is
    used of each. Strips of different length never lie side by side; or, where
    that is known to take so many units, together, they may."""
    m, step = Model(), job.step()
    phases = choices(m, job, step)
    stagger(m, job, phases)
    for f, fabric in enumerate(job.fabrics.values()):
        plies = [k for k, p in enumerate(job.plies) if p.fabric is fabric]
        length = full_width(job, phases, plies)
        sizes = narrow(m, job, f, phases, plies)
        width = (fabric.width + job.gap) // step
        if together:
            length += places(m, f, width, sizes, together * unit(job) - least(job, phases), step)
        else:
            for long in sorted({long for long, _ in sizes}):
                length += lanes(m, f, width, {k: n for k, n in sizes.items() if k[0] == long}, step)
        total = f"t_{f}"
        m.cost.append((1, total))
        m.whole.append(total)
        m.row(length + [(-unit(job), total)], "=", 0)
    return m


def unit(job):
    """The mm that every length of roll is a multiple of."""
    return gcd(*(p.long + job.gap for p in job.plies))


def below(job, length):
    """The longest roll shorter than a length: a sum of lengths of strips."""
    return sums([(p.long + job.gap, 0) for p in job.plies], length - 1)[-1]


def least(job, phases):
    """The least length of full-width strips."""
    return sum(min(p.heights(y).count(p.fabric.width) for y in phases[k]) * (p.long + job.gap) for k, p in enumerate(job.plies))


def choices(m, job, step):
    """Every ply has one phase; the names of the choices by ply and phase."""
    phases = []
    for k, p in enumerate(job.plies):
        names = {y: f"y_{k}_{y}" for y in range(0, p.fabric.width, step) if job.allowed(p, y)}
        m.binary += names.values()
        m.row([(1, name) for name in names.values()], "=", 1)
        phases.append(names)
    return phases


def stagger(m, job, phases):
    """No two plies take phases whose joints lie too close."""
    for i, j, least in job.pairs():
        a, b = job.plies[i], job.plies[j]
        for y, name in phases[i].items():
            close = [other for q, other in phases[j].items()
                     if any(abs(u - v) < least for u in a.counting(y) for v in b.counting(q))]
            if close:
                m.row([(1, name)] + [(1, other) for other in close], "<=", 1)


def full_width(job, phases, plies):
    """The length of the full-width strips, as terms."""
    terms = []
    for k in plies:
        p = job.plies[k]
        for y, name in phases[k].items():
            n = p.heights(y).count(p.fabric.width)
            if n:
                terms.append((n * (p.long + job.gap), name))
    return terms


def narrow(m, job, f, phases, plies):
    """The number of narrow strips of each size (long, high), with the gap."""
    made = defaultdict(Counter)
    for k in plies:
        p = job.plies[k]
        for y, name in phases[k].items():
            for h in p.heights(y):
                if h < p.fabric.width:
                    made[p.long + job.gap, h + job.gap][name] += 1
    sizes = {}
    for (long, high), names in sorted(made.items()):
        sizes[long, high] = f"n_{f}_{long}_{high}"
        m.row([(n, name) for name, n in names.items()] + [(-1, sizes[long, high])], "=", 0)
    return sizes


def lanes(m, f, top, sizes, step):
    """Strips of one length lie side by side in lanes, each a strip long: cut a
    packing across at every length, and each strip meets one cut. A lane is a
    way from one edge of the roll to the other, of strips and of single steps
    left free; the number of lanes is the flow along all ways (arc flow, J. M.
    Valerio de Carvalho, Annals of Operations Research 86, 1999; from memory)."""
    flow = [[] for _ in range(top + 1)]
    for (long, high), n in sizes.items():
        ways = [along(m, flow, f"x_{f}_{long}_{high}_{v}", v, v + high // step) for v in range(top - high // step + 1)]
        m.row([(1, x) for x in ways] + [(-1, n)], "=", 0)
    for v in range(top):
        along(m, flow, f"x_{f}_{long}_free_{v}", v, v + 1)
    for v in range(1, top):
        m.row(flow[v], "=", 0)
    return [(-k * long, x) for k, x in flow[0]]


def along(m, flow, name, a, b):
    """A way from a to b that lanes may take."""
    m.whole.append(name)
    flow[a].append((-1, name))
    flow[b].append((1, name))
    return name


def places(m, f, top, sizes, most, step):
    """Strips of several lengths: each has its corner at a place of the roll, no
    stretch is covered twice, and what is used is used from the start."""
    begins = sums(sizes, most)
    stretches = list(zip(begins, begins[1:]))
    opened = {u: f"c_{f}_{u}" for u, _ in stretches}
    m.binary += opened.values()
    for (a, b) in stretches[1:]:
        m.row([(1, opened[begins[begins.index(a) - 1]]), (-1, opened[a])], ">=", 0)
    cover = {(u, v): [(-1, opened[u])] for u, _ in stretches for v in range(top)}
    for (long, high), n in sizes.items():
        corners = []
        for u, v in product(begins, range(top - high // step + 1)):
            if u + long <= begins[-1]:
                z = f"z_{f}_{long}_{high}_{u}_{v}"
                m.binary.append(z)
                corners.append((1, z))
                for s, q in product(begins[:-1], range(v, v + high // step)):
                    if u <= s < u + long:
                        cover[s, q].append((1, z))
        m.row(corners + [(-1, n)], "=", 0)
    for terms in cover.values():
        m.row(terms, "<=", 0)
    return [(b - a, opened[a]) for a, b in stretches]


def sums(sizes, most):
    """The places along the roll, up to most, at which strips begin or end: sums
    of their lengths."""
    lengths = sorted({long for long, _ in sizes})
    reached = {0}
    for u in range(most + 1):
        if u in reached:
            reached.update(u + long for long in lengths if u + long <= most)
    return sorted(reached)
