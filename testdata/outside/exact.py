"""Holds plans of small right-angled jobs against their true optimum, which
glpsol and cbc find from the figures of the job file alone.

    exact.py SCRATCH [--above PERCENT] JOB.yaml=FOLDER...    exit code 0 so, 1 not

FOLDER holds the plan.json of the job. Held: what the plan uses is the optimum,
or with --above no more than so much above that on a rough grid; no bound is above the optimum;
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

    def __init__(self, path, scratch, roughly):
        self.job, self.scratch = exact_job.Job(path), scratch
        self.name = os.path.splitext(os.path.basename(path))[0]
        self.unit = exact_grid.unit(self.job)
        laid = self.on_the_grid()
        self.holds = f"of phases on a grid of {self.job.step()} mm"
        if not roughly:
            laid = self.refined(laid)
        self.mm = laid - self.job.gap * len(self.job.fabrics)

    def on_the_grid(self, known=None):
        """The least roll with phases on the grid, laid out and judged; known is
        a length that will do."""
        if known:
            units = known // self.unit
        else:
            units, values = self.solve("apart", exact_grid.model(self.job))
        if len({p.long for p in self.job.plies}) > 1:
            units, values = self.solve("together", exact_grid.model(self.job, units))
        laid = exact_witness.length(self.job, values)
        if laid != units * self.unit:
            raise SystemExit(f"{self.name}: an optimum of {units * self.unit} mm is laid in {laid} mm")
        return laid

    def solve(self, name, model):
        return exact_solve.optimum(model.text(), self.scratch, f"{self.name}-{name}")

    def refined(self, laid):
        """The optimum where a grid may hide a better plan than the one laid: two
        plies half a roll apart whose lower edge strips fill the roll stand at
        quarters of it, so at halves of a step, if nowhere else."""
        if exact_free.holds(self.job):
            m = exact_free.model(self.job)
            above, _ = self.solve("free", m)
            if (above + m.more) * self.unit != laid:
                raise SystemExit(f"{self.name}: {laid} mm on the grid, {(above + m.more) * self.unit} mm without")
            self.holds = "of any phases"
            return laid
        if self.job.area_of_roll() > exact_grid.below(self.job, laid):
            self.holds = "of any phases, by the area"
            return laid
        self.job.parts *= 2
        finer = self.on_the_grid(laid)
        if finer < laid:
            return self.refined(finer)
        self.holds = f"of phases on a grid of {self.job.step()} mm"
        return laid


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
        with open(os.path.join(folder, "plan.json"), encoding="utf-8") as f:
            plan = json.load(f)
        optimum = Optimum(path, sys.argv[1], above > 0)
        found = "; ".join(faults(plan, optimum.mm, above))
        print(f"{optimum.name}: {optimum.mm} mm, {optimum.holds}; {found or verdict(plan, optimum.mm)}")
        bad = bad or bool(found)
    sys.exit(bad)


main()
