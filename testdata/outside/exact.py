"""Holds plans of small right-angled jobs against their true optimum, which
glpsol and cbc find from the figures of the job file alone.

    exact.py SCRATCH JOB.yaml=FOLDER...       exit code 0 equal, 1 not

FOLDER holds the plan.json of the job. Held: what the plan uses is the optimum;
no bound is above it; where the plan says optimal, the bound is what is used."""
import json
import os
import sys

import exact_grid
import exact_job
import exact_solve


def least(job, scratch, name):
    """The least roll of all fabrics together, in mm."""
    step = job.step()
    units = exact_solve.optimum(exact_grid.model(job, step).text(), scratch, name + "-apart")
    apart = units
    if len({p.long for p in job.plies}) > 1:
        units = exact_solve.optimum(exact_grid.model(job, step, apart).text(), scratch, name)
    return units * exact_grid.unit(job) - job.gap * len(job.fabrics), step


def faults(plan, optimum):
    used = sum(c["used"] for c in plan["cost"])
    bound = sum(c["bound"] for c in plan["cost"])
    if abs(used - optimum) > 0.001:
        yield f"the plan uses {used:g} mm, the optimum is {optimum}"
    if bound > optimum + 0.001:
        yield f"a bound of {bound:g} mm is above the optimum {optimum}"
    for c in plan["cost"]:
        if c["status"] == "optimal" and abs(c["bound"] - c["used"]) > 0.001:
            yield f"{c['fabric']}: called optimal at {c['used']:g} mm with a bound of {c['bound']:g}"


def main():
    bad = len(sys.argv) < 3
    for pair in sys.argv[2:]:
        path, folder = pair.split("=")
        name = os.path.splitext(os.path.basename(path))[0]
        with open(os.path.join(folder, "plan.json"), encoding="utf-8") as f:
            plan = json.load(f)
        optimum, step = least(exact_job.Job(path), sys.argv[1], name)
        found = list(faults(plan, optimum))
        status = ", ".join(c["status"] for c in plan["cost"])
        print(f"{name}: {optimum} mm on a grid of {step} mm, by glpsol and cbc; planned {status}: {'; '.join(found) or 'equal'}")
        bad = bad or bool(found)
    sys.exit(bad)


main()
