"""A small job of parallel plies as a mixed integer programme whose phases are no
grid's: they are any number of mm. It tells whether the grid of exact_grid.py
hides a better plan. Every part is at least two rolls across, so that joints keep
the stagger where the phases keep it around the roll.

    p     phase of a ply, the height of its lowest strip: 0 to the roll's width
    s     1 where the strip at the upper edge begins one roll lower: the plies
          r + q rolls across have q - s strips of full width, and two edge strips
          of p and r + s - p (in roll widths)
    e     1 where an edge strip is left out, of height 0
    o     which of two plies has the lower phase
    k     on which side of a zone to be kept clear the joints lie
    x     1 where an edge strip lies in a lane, which is a strip long
    h     what an edge strip takes of a lane across, h 0 where it lies elsewhere
    z     1 where a lane is used"""
from exact_grid import Model


def holds(job):
    """Whether the model can be written for a job."""
    first = job.plies[0]
    alike = all(p.angle == first.angle and p.fabric is first.fabric for p in job.plies)
    return alike and first.across - 2 * first.trim >= 2 * first.fabric.width


def model(job):
    """The programme; its optimum is the number of strip lengths of roll beyond
    those that it carries as more."""
    m = Model()
    phases(m, job)
    stagger(m, job)
    keep_clear(m, job)
    lanes(m, job)
    q, r = divmod(job.plies[0].across, job.plies[0].fabric.width)
    area = -(-len(job.plies) * r // job.plies[0].fabric.width)  # lanes that the edge strips take by their area
    lower = [(1, f"z_{k}") for k in range(2 * len(job.plies))] + [(-1, f"s_{k}") for k in range(len(job.plies))]
    m.row(lower + [(-1, "above")], "=", area)
    m.whole.append("above")
    m.cost.append((1, "above"))
    m.more = q * len(job.plies) + area
    return m


def phases(m, job):
    for k, p in enumerate(job.plies):
        w = p.fabric.width
        r = p.across % w
        m.binary += [f"s_{k}", f"e_{k}_low", f"e_{k}_high"]
        m.row([(1, f"p_{k}"), (-r, f"s_{k}")], ">=", 0)
        m.row([(1, f"p_{k}"), (r - w, f"s_{k}")], "<=", r)
        m.row([(1, f"top_{k}"), (1, f"p_{k}"), (-w, f"s_{k}")], "=", r)
        for height, left in ((f"p_{k}", f"e_{k}_low"), (f"top_{k}", f"e_{k}_high")):
            m.row([(1, height), (w, left)], "<=", w)
            m.row([(1, height), (job.narrowest, left)], ">=", job.narrowest)


def stagger(m, job):
    """Either p - q or q - p is the stagger at least, and no more than leaves it
    around the roll."""
    for i, j, least in job.pairs():
        w, o = job.plies[i].fabric.width, f"o_{i}_{j}"
        m.binary.append(o)
        m.row([(1, f"p_{i}"), (-1, f"p_{j}"), (w, o)], ">=", least)
        m.row([(1, f"p_{i}"), (-1, f"p_{j}"), (w, o)], "<=", w - least)


def keep_clear(m, job):
    """No joint strictly inside a zone: below it or above, on every roll's width
    that the zone reaches into."""
    for k, p in enumerate(job.plies):
        w = p.fabric.width
        for z, (low, high) in enumerate(p.zones):
            for n in range(low // w, (high - 1) // w + 1):
                side = f"k_{k}_{z}_{n + 1}"
                m.binary.append(side)
                m.row([(1, f"p_{k}"), (-w, side)], "<=", low - n * w)
                m.row([(1, f"p_{k}"), (-w, side)], ">=", high - n * w - w)


def lanes(m, job):
    """Edge strips side by side; a lane opens before the next, and the i-th edge
    strip lies in one of the first i."""
    w = job.plies[0].fabric.width + job.gap
    edges = [height for k in range(len(job.plies)) for height in (f"p_{k}", f"top_{k}")]
    for lane in range(len(edges)):
        m.binary.append(f"z_{lane}")
        m.row([(1, f"h_{i}_{lane}") for i in range(lane, len(edges))] + [(-w, f"z_{lane}")], "<=", 0)
        if lane:
            m.row([(1, f"z_{lane - 1}"), (-1, f"z_{lane}")], ">=", 0)
    for i, height in enumerate(edges):
        left = f"e_{i // 2}_{'high' if i % 2 else 'low'}"
        for lane in range(i + 1):
            x, h = f"x_{i}_{lane}", f"h_{i}_{lane}"
            m.binary.append(x)
            m.row([(1, h), (-1, height), (job.gap, left), (-w, x)], ">=", job.gap - w)
            m.row([(1, x), (-1, f"z_{lane}")], "<=", 0)
        m.row([(1, f"x_{i}_{lane}") for lane in range(i + 1)], "=", 1)
        m.row([(1, f"h_{i}_{lane}") for lane in range(i + 1)] + [(-1, height)], ">=", 0)
