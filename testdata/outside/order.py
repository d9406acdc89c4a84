"""Holds order.json and order.csv against plan.json, with shapely, sharing no code
with the program.

usage: order.py FOLDER...       each with the three files; exit code 0 right, 1 not

Held: cloth to buy is what the rolls to buy are cut by, with spare, in whole sold
lengths; dry weights are areas times areal weights; the resin of each line is its
area at so many g/m2, that of the plies by volume and density; hardener and resin
are in the ratio asked for and batches no larger than allowed; consumables cover
the outline grown or shrunk by their margin, tape runs round it; sheets of core
cover it; the CSV says the same as the JSON, in both units.
"""
import csv
import json
import math
import sys

from shapely.geometry import Polygon

US = {"m": 0.9144, "kg": 0.45359237, "m2": 0.9144**2, "sheets": 1}


class Order:
    def __init__(self, folder):
        with open(f"{folder}/plan.json") as f:
            self.plan = json.load(f)
        with open(f"{folder}/order.json") as f:
            self.order = json.load(f)
        with open(f"{folder}/order.csv", newline="") as f:
            self.rows = list(csv.DictReader(f))
        self.faults, self.held = [], 0

    def near(self, what, got, want, within=1e-6):
        self.held += 1
        if not abs(got - want) <= within * max(1, abs(want)):
            self.faults.append(f"{what}: {got}, want {want}")

    def true(self, what, ok):
        self.held += 1
        if not ok:
            self.faults.append(what)

    def items(self, kind):
        return [i for i in self.order["items"] if i["kind"] == kind]

    def cloth(self):
        rules = self.plan["rules"]
        for item in self.items("cloth"):
            rolls = [r for r in self.plan["rolls"] if r["fabric"] == item["name"] and r["width_mm"] == item["width_mm"]]
            used = sum(r["used_length_mm"] for r in rolls)
            bought = sum(r["used_length_mm"] for r in rolls if r["stock_length_mm"] is None)
            need = bought * (1 + rules["spare_percent"] / 100)
            self.near(f"{item['name']} used", item["net"]["value"] * 1000, used, 1e-4)
            by = rules["sold_by_mm"]
            want = math.ceil(need / by - 1e-9) * by if by else need
            self.near(f"{item['name']} to buy", item["to_buy"]["value"] * 1000, want, 1e-4)
        self.near("fabrics and widths", len(self.items("cloth")), len({(r["fabric"], r["width_mm"]) for r in self.plan["rolls"]}))

    def kits(self):
        weights = {f["name"]: f["weight_gsm"] for f in self.plan["fabrics"]}
        self.near("kits", len(self.order["plies"]), len(self.plan["plies"]))
        for ply, kit in zip(self.plan["plies"], self.order["plies"]):
            area = Polygon(ply["blank"]["outer"], ply["blank"]["holes"]).area
            self.near(f"ply {ply['ply']} dry", kit["dry_g"], area * weights[ply["fabric"]] / 1e6, 1e-4)
            self.near(f"ply {ply['ply']} pieces", kit["pieces"], len(ply["strips"]))

    def resin(self):
        resin, made = self.plan.get("resin"), self.order["resin"]
        if resin is None:
            self.true("resin without a word of it in the plan", made is None)
            return
        lines = {line["what"]: line for line in made["lines"]}
        for line in made["lines"]:
            if "gsm" in line:
                self.near(line["what"], line["mass_g"]["value"], line["area_mm2"] * line["gsm"]["value"] / 1e6, 1e-4)
        for fabric in self.plan["fabrics"]:
            plies = [p for p in self.plan["plies"] if p["fabric"] == fabric["name"]]
            line = lines.get(f"plies of {fabric['name']}")
            if not plies or line is None:
                continue
            area = sum(Polygon(p["blank"]["outer"], p["blank"]["holes"]).area for p in plies)
            self.near(f"area of {fabric['name']}", line["area_mm2"], area, 1e-5)
            fibre, density = fabric["density_gcm3"]["value"], resin["density_gcm3"]["value"]
            volume = (fabric.get("fibre_volume") or resin.get("fibre_volume") or {}).get("value")
            mass = (resin.get("fibre_mass") or {}).get("value")
            if volume:
                self.near(f"resin in {fabric['name']}", line["gsm"]["value"], fabric["weight_gsm"] / fibre / volume * (1 - volume) * density, 1e-5)
            elif mass:
                self.near(f"resin in {fabric['name']}", line["gsm"]["value"], fabric["weight_gsm"] * (1 / mass - 1), 1e-5)
        net = sum(line["mass_g"]["value"] for line in made["lines"])
        self.near("resin together", made["net_g"], net, 1e-5)
        self.near("resin to mix", made["total_g"], net * (1 + resin.get("spare_percent", {"value": 0})["value"] / 100), 1e-5)
        self.mix(resin, made)

    def mix(self, resin, made):
        mix, asked = made["mix"], resin.get("mix")
        if asked is None:
            self.true("mixed without a ratio", mix is None)
            return
        a, b = asked["parts_a"], asked["parts_b"]
        if asked.get("by_volume"):
            a, b = a * asked["density_a_gcm3"], b * asked["density_b_gcm3"]
            self.near("volumes", mix["a"]["ml"] / mix["b"]["ml"], asked["parts_a"] / asked["parts_b"], 1e-4)
        self.near("resin to hardener", mix["a"]["g"] / mix["b"]["g"], a / b, 1e-4)
        self.near("both", mix["a"]["g"] + mix["b"]["g"], made["total_g"], 1e-5)
        self.near("batches", mix["batches"] * mix["batch_g"], made["total_g"], 1e-4)
        if resin.get("batch_g"):
            self.true("a batch above the largest", mix["batch_g"] <= resin["batch_g"] + 0.001)
            self.true("more batches than needed", made["total_g"] > (mix["batches"] - 1) * resin["batch_g"])
        bought = {i["kind"]: i["to_buy"]["value"] * 1000 for i in self.order["items"]}
        if not resin.get("on_hand_g"):
            self.true("less resin than is mixed", bought["resin"] >= mix["a"]["g"] - 0.001 and bought["hardener"] >= mix["b"]["g"] - 0.001)

    def consumables(self):
        net = Polygon(self.plan["part"]["net"]["outer"])
        asked = self.plan.get("consumables", [])
        self.near("consumables", len(self.order["consumables"]), len(asked))
        for stated, c, item in zip(asked, self.order["consumables"], self.items("consumable")):
            margin = stated.get("margin_mm", {"value": 0})["value"]
            pleats = stated.get("pleats", {"value": 0})["value"] * stated.get("pleat_mm", {"value": 0})["value"]
            if c["kind"] == "film":
                margin += pleats / 4
            cover = net.buffer(margin, join_style=2, mitre_limit=2)
            if c["kind"] == "sealant tape":
                self.near(c["name"], c["length_mm"]["value"], cover.exterior.length + 2 * pleats, 2e-3)
            elif c["kind"] != "tube":
                filled = Polygon(cover.exterior).area if cover.geom_type == "Polygon" else cover.area
                self.near(c["name"], c["area_mm2"], filled * c["layers"], 2e-3)
                if c.get("lanes"):
                    self.true(f"{c['name']} is not covered", c["length_mm"]["value"] * c["width_mm"] >= c["area_mm2"] - 1)
            need = item["net"]["value"] * (1 + item["spare_percent"]["value"] / 100) - item["on_hand"]["value"]
            by = item["sold_by"]["value"]
            self.true(f"{c['name']}: less to buy than is used", item["to_buy"]["value"] >= need - 1e-3)
            if by:
                self.near(f"{c['name']} in whole sold lengths", item["to_buy"]["value"] / by, round(item["to_buy"]["value"] / by), 1e-3)

    def cores(self):
        for asked, made in zip(self.plan.get("cores", []), self.order["cores"]):
            area = Polygon(asked["blank"]["outer"], asked["blank"]["holes"]).area
            self.near(f"core {asked['name']} dry", made["mass_g"], area * asked["thickness_mm"] * asked["density_kgm3"] / 1e6, 1e-4)
            long, wide = asked["sheet_mm"]
            if long:
                self.true(f"core {asked['name']} is not covered", made["sheets"]["value"] * long * wide >= area - 1)
                self.near(f"core {asked['name']} by area", made["least_by_area"], math.ceil(area / long / wide - 1e-9))

    def table(self):
        self.near("lines of order.csv", len(self.rows), len(self.order["items"]))
        for row, item in zip(self.rows, self.order["items"]):
            self.true(f"{row['item']} is another item than {item['name']}", row["kind"] == item["kind"] and row["item"].endswith(f" {item['name']}"))
            for column, key in (("net", "net"), ("to_buy", "to_buy")):
                self.near(f"{row['item']} {column}", float(row[column]), item[key]["value"])
                self.near(f"{row['item']} {column}_us", float(row[column + "_us"]) * US[row["unit"]], item[key]["value"], 2e-4)

    def judge(self):
        for part in (self.cloth, self.kits, self.resin, self.consumables, self.cores, self.table):
            part()
        return self.faults


def main():
    wrong = False
    for folder in sys.argv[1:]:
        order = Order(folder)
        faults = order.judge()
        print(f"{folder}: {order.held} figures held" if not faults else "\n".join(f"{folder}: {f}" for f in faults))
        wrong = wrong or bool(faults)
    return 1 if wrong or len(sys.argv) < 2 else 0


if __name__ == "__main__":
    sys.exit(main())
