"""Judges a solution of exact_grid.py without its rows: the phases make the
strips, every narrow strip is laid once, none over another, and the joints keep
the stagger. What is so laid out shows that the optimum can be reached."""
from collections import Counter
from itertools import combinations


class Laid(Exception):
    """What is wrong with a solution."""


def length(job, values):
    """The roll that the solution takes, with a cutting gap too much for every
    fabric, in mm."""
    phases = {}
    for words, value in values:
        if words[0] == "y" and value == 1:
            phases[int(words[1])] = int(words[2])
    if sorted(phases) != list(range(len(job.plies))):
        raise Laid(f"phases of plies {sorted(phases)}")
    for i, j, least in job.pairs():
        for u in job.plies[i].counting(phases[i]):
            for v in job.plies[j].counting(phases[j]):
                if abs(u - v) < least:
                    raise Laid(f"joints {u} and {v} of plies {i + 1} and {j + 1}")
    return sum(one_fabric(job, f, fabric, phases, values) for f, fabric in enumerate(job.fabrics.values()))


def one_fabric(job, f, fabric, phases, values):
    cut, total = Counter(), 0
    for k, p in enumerate(job.plies):
        if p.fabric is not fabric:
            continue
        if not job.allowed(p, phases[k]):
            raise Laid(f"phase {phases[k]} of ply {k + 1}")
        for h in p.heights(phases[k]):
            if h == fabric.width:
                total += p.long + job.gap
            else:
                cut[p.long + job.gap, h + job.gap] += 1
    mine = [(words[0], [int(x) for x in words[2:]], value) for words, value in values
            if words[0] in "xz" and words[1] == str(f) and "free" not in words]
    pieces = [at for kind, at, value in mine if kind == "z" for _ in range(value)]
    runs = [at for kind, at, value in mine if kind == "x" for _ in range(value)]
    if Counter(tuple(at[:2]) for at in pieces + runs) != cut:
        raise Laid("the strips laid are not those cut")
    top = fabric.width + job.gap
    return total + side_by_side(pieces, top, job.step()) + in_lanes(runs, top, job.step())


def side_by_side(pieces, top, step):
    """The end of strips [long, high, u, v in steps], which must lie apart."""
    boxes = [(u, v * step, u + long, v * step + high) for long, high, u, v in pieces]
    for a, b in combinations(boxes, 2):
        if max(a[0], b[0]) < min(a[2], b[2]) and max(a[1], b[1]) < min(a[3], b[3]):
            raise Laid(f"{a} lies over {b}")
    if any(b[1] < 0 or b[3] > top for b in boxes):
        raise Laid("a strip lies beside the roll")
    return max((b[2] for b in boxes), default=0)


def in_lanes(runs, top, step):
    """The length of lanes that strips [long, high, v in steps] take: in the order
    of their lower edges, each goes into the lane that is filled furthest below it."""
    lanes = []
    for long, high, v in sorted(runs, key=lambda at: (at[0], at[2])):
        free = [lane for lane in lanes if lane[0] == long and lane[1] <= v * step]
        lane = max(free, key=lambda lane: lane[1], default=None)
        if lane is None:
            lane = [long, 0]
            lanes.append(lane)
        lane[1] = v * step + high
        if lane[1] > top:
            raise Laid("a strip lies beside the roll")
    return sum(long for long, _ in lanes)
