"""Holds plans of small right-angled jobs against their true optimum, which
glpsol and cbc find from the figures of the job file alone.

    exact.py SCRATCH [--above PERCENT] JOB.yaml=FOLDER...    exit code 0 so, 1 not

FOLDER holds the plan.json of the job. Held: what the plan uses is the optimum,
or with --above no more than so much above it; no bound is above the optimum;
where the plan says optimal, the bound is what is used."""
import json
import os
import sys

import exact_free
import exact_grid
import exact_job
import exact_solve
import exact_witness


class Optimum:
    """The least roll of all fabrics together, in mm, and how far that holds."""

    def __init__(self, job, scratch, name):
        self.job, self.unit = job, exact_grid.unit(job)
        lengths = {p.long for p in job.plies}
        name += "-apart" if len(lengths) > 1 else ""
        units, values = exact_solve.optimum(exact_grid.model(job).text(), scratch, name)
        if len(lengths) > 1:
            name = name.removesuffix("-apart")
            units, values = exact_solve.optimum(exact_grid.model(job, units).text(), scratch, name)
        laid = exact_witness.length(job, values)
        if laid != units * self.unit:
            raise SystemExit(f"{name}: an optimum of {units * self.unit} mm is laid in {laid} mm")
        self.mm = laid - job.gap * len(job.fabrics)
        self.holds = self.reach(laid, scratch, name)

    def reach(self, laid, scratch, name):
        """Whether the optimum is that of any phases, or of those on the grid."""
        if exact_free.holds(self.job):
            m = exact_free.model(self.job)
            above, _ = exact_solve.optimum(m.text(), scratch, name + "-free")
            if (above + m.more) * self.unit != laid:
                raise SystemExit(f"{name}: {laid} mm on the grid, {above + m.more} strips of {self.unit} mm on none")
            return "of any phases"
        if self.job.area_of_roll() > exact_grid.below(self.job, laid):
            return "of any phases, by the area"
        return f"of phases on a grid of {self.job.step()} mm"


def faults(plan, optimum, above):
    used = sum(c["used"] for c in plan["cost"])
    bound = sum(c["bound"] for c in plan["cost"])
    if used < optimum - 0.001 or used > optimum * (1 + above / 100) + 0.001:
        yield f"the plan uses {used:g} mm, the optimum is {optimum}"
    if bound > optimum + 0.001:
        yield f"a bound of {bound:g} mm is above the optimum {optimum}"
    for c in plan["cost"]:
        if c["status"] == "optimal" and abs(c["bound"] - c["used"]) > 0.001:
            yield f"{c['fabric']}: called optimal at {c['used']:g} mm with a bound of {c['bound']:g}"


def verdict(plan, optimum):
    used, bound = sum(c["used"] for c in plan["cost"]), sum(c["bound"] for c in plan["cost"])
    status = " and ".join(c["status"] for c in plan["cost"])
    words = "equal" if abs(used - optimum) < 0.001 else f"{100 * (used / optimum - 1):.2f} % above"
    return f"planned {words}, {status}, bound {100 * (1 - bound / optimum):.2f} % below"


def main():
    bad = len(sys.argv) < 3
    arguments, above = sys.argv[2:], 0.0
    if arguments[:1] == ["--above"]:
        above, arguments = float(arguments[1]), arguments[2:]
    for pair in arguments:
        path, folder = pair.split("=")
        name = os.path.splitext(os.path.basename(path))[0]
        with open(os.path.join(folder, "plan.json"), encoding="utf-8") as f:
            plan = json.load(f)
        optimum = Optimum(exact_job.Job(path), sys.argv[1], name)
        found = "; ".join(faults(plan, optimum.mm, above))
        print(f"{name}: {optimum.mm} mm, {optimum.holds}; {found or verdict(plan, optimum.mm)}")
        bad = bad or bool(found)
    sys.exit(bad)


main()
