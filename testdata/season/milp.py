#!/usr/bin/python3
"""Solves a season planning problem as a mixed-integer model, with HiGHS.

Reads a problem as written by the Go package planner (docs/season-model.md) and
prints one line of JSON: the cost of the best plan, a bound, and whether it is
proven. It shares nothing with the Go solver but the format of the problem.

    milp.py [--seconds N] [--store | --check] PROBLEM.json ...

Needs python3-scipy (1.9 or newer). For each boundary k of a chain and each day t
there is a variable y[k,t] that is 1 when the boundary lies on t or before.
"""

import argparse
import datetime
import json
import sys

import numpy as np
import scipy
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_matrix


def day(text):
    return datetime.date.fromisoformat(text).toordinal()


class Model:
    def __init__(self):
        self.cost, self.low, self.high, self.whole = [], [], [], []
        self.rows, self.columns, self.values = [], [], []
        self.row_low, self.row_high = [], []

    def variable(self, low=0.0, high=1.0, cost=0.0, whole=1):
        self.cost.append(cost)
        self.low.append(low)
        self.high.append(high)
        self.whole.append(whole)
        return len(self.cost) - 1

    def row(self, terms, low=-np.inf, high=np.inf):
        n = len(self.row_low)
        for variable, value in terms:
            self.rows.append(n)
            self.columns.append(variable)
            self.values.append(value)
        self.row_low.append(low)
        self.row_high.append(high)

    def solve(self, seconds):
        shape = (len(self.row_low), len(self.cost))
        matrix = coo_matrix((self.values, (self.rows, self.columns)), shape=shape).tocsr()
        options = {"mip_rel_gap": 0.0}
        if seconds:
            options["time_limit"] = seconds
        return milp(np.array(self.cost), integrality=np.array(self.whole), options=options,
                    bounds=Bounds(self.low, self.high),
                    constraints=LinearConstraint(matrix, self.row_low, self.row_high))


def build(problem):
    m = Model()
    first, days = day(problem["first"]), problem["days"]
    left = {r["name"]: [r["count"]] * days for r in problem.get("resources") or []}
    for t in problem.get("taken") or []:
        for d in range(days):
            if t["resource"] in left and day(t["span"]["first"]) <= first + d <= day(t["span"]["last"]):
                left[t["resource"]][d] = max(0, left[t["resource"]][d] - t["amount"])
    away = {d - first for s in problem.get("away") or [] for d in range(day(s["first"]), day(s["last"]) + 1)}
    used = {name: [[] for _ in range(days)] for name in left}
    constant = 0
    for chain in problem["chains"]:
        for a in set(chain.get("animals") or []):
            left.setdefault(("animal", a), [1] * days)
            used.setdefault(("animal", a), [[] for _ in range(days)])
        constant += add_chain(m, chain, first, days, away, used)
    for name, by_day in used.items():
        for d, terms in enumerate(by_day):
            if terms:
                m.row(terms, high=left[name][d])
    return m, constant


def add_chain(m, chain, first, days, away, used):
    phases = chain["phases"]
    n = len(phases)
    number = {p["name"]: k for k, p in enumerate(phases)}
    number["end"] = n
    constant = chain.get("leave_out", 0)
    planned = m.variable(low=0.0 if constant else 1.0, cost=-constant)
    y = [[m.variable() for _ in range(days + 1)] for _ in range(n + 1)]
    by = lambda k, t: [] if t < 0 else [(y[k][min(t, days)], 1.0)]
    minus = lambda terms: [(v, -c) for v, c in terms]
    on = lambda k, t: by(k, t) + minus(by(k, t - 1))  # 1 when boundary k lies on t

    for k in range(n + 1):
        for t in range(1, days + 1):
            m.row([(y[k][t], 1.0), (y[k][t - 1], -1.0)], low=0.0)
        m.row([(y[k][days], 1.0), (planned, -1.0)], low=0.0, high=0.0)

    def use(resource, amount, d, terms):
        if resource in used and amount and 0 <= d < days:
            used[resource][d] += [(v, c * amount) for v, c in terms]

    def close(k, t):
        if 0 <= t <= days:
            m.row(on(k, t), high=0.0)

    for k, p in enumerate(phases):
        for t in range(days + 1):
            m.row(by(k + 1, t) + minus(by(k, t - p["min"])), high=0.0)
            if t + p["max"] <= days:
                m.row(by(k + 1, t + p["max"]) + minus(by(k, t)), low=0.0)
            if p.get("earliest") and first + t < day(p["earliest"]):
                close(k, t)
            if p.get("latest") and first + t > day(p["latest"]):
                close(k, t)
        for d in range(days):
            inside = by(k, d) + minus(by(k + 1, d))
            if p.get("attended") and d in away:
                m.row(inside, high=0.0)
            for u in p.get("uses") or []:
                use(u["resource"], u["amount"], d, inside)
            use("minutes", p.get("minutes", 0), d, inside)
        if p.get("stretch"):
            # length = last day of the next boundary less that of this one, and a
            # boundary that lies on t has days + 1 - t variables at 1
            length = [(v, 1.0) for v in y[k]] + [(v, -1.0) for v in y[k + 1]]
            off = m.variable(high=np.inf, cost=p["stretch"], whole=0)
            m.row([(off, 1.0)] + minus(length) + [(planned, p["usual"])], low=0.0)
            m.row([(off, 1.0)] + length + [(planned, -p["usual"])], low=0.0)
    for a in set(chain.get("animals") or []):
        for d in range(days):
            use(("animal", a), 1, d, by(0, d) + minus(by(n, d)))
    for h in chain.get("holds") or []:
        k = number[h["phase"]]
        until = day(h["until"]) - first if h.get("until") else -1
        for d in range(days):
            begun = by(k, d - h["from"])
            use(h["resource"], h["amount"], d, begun if d <= until else begun + minus(by(k, d - h["to"])))
    for v in chain.get("visits") or []:
        k = number[v["phase"]]
        for t in range(days + 1):
            if t + v["day"] in away:
                close(k, t)
            use("minutes", v.get("minutes", 0), t + v["day"], on(k, t))
    for w in chain.get("wishes") or []:
        k, wish = number[w["phase"]], day(w["on"]) - first
        price = [max(w["late"] * (t - wish), w["early"] * (wish - t)) for t in range(days + 1)]
        for t in range(days + 1):
            for v, c in on(k, t):
                m.cost[v] += c * price[t]
    return constant


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--seconds", type=float, default=0, help="for each problem; no limit when left out")
    arguments.add_argument("--store", action="store_true", help="write a proven cost into the file")
    arguments.add_argument("--check", action="store_true", help="fail when the cost is not the one in the file")
    arguments.add_argument("files", nargs="+")
    given = arguments.parse_args()
    wrong = 0
    for name in given.files:
        with open(name, encoding="utf-8") as f:
            text = json.load(f)
        m, constant = build(text.get("problem", text))
        r = m.solve(given.seconds)
        out = {"file": name, "proven": r.status == 0, "feasible": r.x is not None}
        if r.x is not None:
            out["cost"] = round(r.fun + constant)
        if getattr(r, "mip_dual_bound", None) is not None:
            out["bound"] = round(r.mip_dual_bound + constant, 3)
        print(json.dumps(out), flush=True)
        if given.store and out["proven"]:
            text["cost"], text["solver"] = out["cost"], "HiGHS in scipy " + scipy.__version__
            with open(name, "w", encoding="utf-8") as f:
                json.dump(text, f, separators=(",", ":"))
        if given.check and not (out["proven"] and out["cost"] == text["cost"]):
            wrong += 1
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
