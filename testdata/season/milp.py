#!/usr/bin/python3
"""Solves a season planning problem as a mixed-integer model, with HiGHS.

Reads the document of a problem (docs/season-model.md) and prints one line of
JSON: the cost of the best plan, a bound, and whether it is proven. It shares
nothing with the Go solver but the format of the document.

    milp.py [--seconds N] [--alone] [--store | --check] DOCUMENT.json ...

When the document has a plan, only plans that cost as much or less are looked for:
none is found if the plan cannot be had for its cost, and a cheaper one if there
is one.

Needs python3-scipy (1.9 or newer). For each boundary k of a chain and each day t
there is a variable y[k,t] that is 1 when the boundary lies on t or before.
"""

import argparse
import datetime
import json
import sys
import time

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


def away_days(problem, first):
    return {d - first for s in problem.get("away") or [] for d in range(day(s["first"]), day(s["last"]) + 1)}


def build(problem):
    m, starts = Model(), []
    first, days = day(problem["first"]), problem["days"]
    left = {r["name"]: [r["count"]] * days for r in problem.get("resources") or []}
    for t in problem.get("taken") or []:
        for d in range(days):
            if t["resource"] in left and day(t["span"]["first"]) <= first + d <= day(t["span"]["last"]):
                left[t["resource"]][d] = max(0, left[t["resource"]][d] - t["amount"])
    away = away_days(problem, first)
    used = {name: [[] for _ in range(days)] for name in left}
    constant = 0
    for chain in problem["chains"]:
        for a in set(chain.get("animals") or []):
            left.setdefault(("animal", a), [1] * days)
            used.setdefault(("animal", a), [[] for _ in range(days)])
        constant += chain.get("leave_out", 0)
        starts.append(add_chain(m, chain, first, days, away, used))
    for name, by_day in used.items():
        for d, terms in enumerate(by_day):
            if terms:
                m.row(terms, high=left[name][d])
    return m, constant, starts


def add_chain(m, chain, first, days, away, used):
    phases = chain["phases"]
    n = len(phases)
    number = {p["name"]: k for k, p in enumerate(phases)}
    number["end"] = n
    leave_out = chain.get("leave_out", 0)
    planned = m.variable(low=0.0 if leave_out else 1.0, cost=-leave_out)
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
    return planned, y


def reach(chain, first, days, away, most):
    """Where the boundaries of a chain can lie, when it alone may cost at most so
    much: for each boundary and day the least cost of a cycle through it."""
    phases, n, never = chain["phases"], len(chain["phases"]), float("inf")
    number = {p["name"]: k for k, p in enumerate(phases)} | {"end": n}
    node = [[0.0] * (days + 1) for _ in range(n + 1)]
    for w in chain.get("wishes") or []:
        wish = day(w["on"]) - first
        for t in range(days + 1):
            node[number[w["phase"]]][t] += max(w["late"] * (t - wish), w["early"] * (wish - t))
    for v in chain.get("visits") or []:
        for t in range(days + 1):
            if t + v["day"] in away:
                node[number[v["phase"]]][t] = never
    for k, p in enumerate(phases):
        for t in range(days + 1):
            if p.get("earliest") and first + t < day(p["earliest"]) or p.get("latest") and first + t > day(p["latest"]):
                node[k][t] = never

    def steps(k):
        p = phases[k]
        for t in range(days + 1):
            for e in range(t + p["min"], min(t + p["max"], days) + 1):
                if node[k][t] + node[k + 1][e] <= most and not (p.get("attended") and away.intersection(range(t, e))):
                    yield t, e, p.get("stretch", 0) * abs(e - t - p["usual"])

    before, after = [node[0]], [node[n]]
    for k in range(n):
        row = [never] * (days + 1)
        for t, e, c in steps(k):
            row[e] = min(row[e], before[-1][t] + c + node[k + 1][e])
        before.append(row)
    for k in reversed(range(n)):
        row = [never] * (days + 1)
        for t, e, c in steps(k):
            row[t] = min(row[t], after[0][e] + c + node[k][t])
        after.insert(0, row)
    return [[b + a - v if v < never else never for b, a, v in zip(*rows)] for rows in zip(before, after, node)]


def narrow(m, problem, starts, cost):
    """Leaves out what no plan of at most this cost can have: chain by chain, when
    all others cost as much as they do alone."""
    first, days = day(problem["first"]), problem["days"]
    away = away_days(problem, first)
    through, least = [], []
    for chain in problem["chains"]:
        through.append(reach(chain, first, days, away, cost))
        out = chain.get("leave_out") or float("inf")
        least.append(min(out, min(map(min, through[-1]))))
    for chain, (planned, y), rows, alone in zip(problem["chains"], starts, through, least):
        most = cost - (sum(least) - alone)
        if not chain.get("leave_out") or chain["leave_out"] > most:
            m.low[planned] = 1.0
        if min(map(min, rows)) > most:
            m.high[planned] = 0.0
            continue
        for k, row in enumerate(rows):
            open_days = [t for t, c in enumerate(row) if c <= most]
            for t in range(min(open_days)):
                m.high[y[k][t]] = 0.0
            for t in range(max(open_days), days):
                m.row([(y[k][t], 1.0), (planned, -1.0)], low=0.0)
            for t in range(min(open_days) + 1, max(open_days)):
                if row[t] > most:
                    m.row([(y[k][t], 1.0), (y[k][t - 1], -1.0)], high=0.0)


def plan_of(problem, starts, x, plan, cost):
    first = day(problem["first"])
    cycles = []
    for chain, (planned, y) in zip(problem["chains"], starts):
        days = []
        if x[planned] > 0.5:
            days = [datetime.date.fromordinal(first + next(t for t, v in enumerate(row) if x[v] > 0.5)).isoformat() for row in y]
        cycles.append({"id": chain["id"], "days": days})
    return {"cycles": cycles, "cost": cost, "bound": cost, "missing": plan["missing"], "proven": True}


def run(name, given):
    """Solves one file; true when it is as it should be."""
    with open(name, encoding="utf-8") as f:
        text = json.load(f)
    problem, plan = text["problem"], text.get("plan")
    began = time.monotonic()
    m, constant, starts = build(problem)
    if plan and not given.alone:
        narrow(m, problem, starts, plan["cost"])
    r = m.solve(given.seconds)
    out = {"file": name, "proven": r.status == 0, "feasible": r.x is not None}
    if r.x is not None:
        out["cost"] = round(r.fun + constant)
    if getattr(r, "mip_dual_bound", None) is not None:
        out["bound"] = round(r.mip_dual_bound + constant, 3)
    out["seconds"] = round(time.monotonic() - began, 1)
    print(json.dumps(out), flush=True)
    if given.store and out["proven"]:
        text["plan"] = plan_of(problem, starts, r.x, plan, out["cost"])
        text["solver"] = "HiGHS in scipy " + scipy.__version__
        with open(name, "w", encoding="utf-8") as f:
            json.dump(text, f, separators=(",", ":"))
    return out["proven"] and out["cost"] == plan["cost"]


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--seconds", type=float, default=0, help="for each problem; no limit when left out")
    arguments.add_argument("--alone", action="store_true", help="do not use the cost of the plan in the file as a limit")
    arguments.add_argument("--store", action="store_true", help="write a proven plan into the file")
    arguments.add_argument("--check", action="store_true", help="fail when the cost is not the one of the plan in the file")
    arguments.add_argument("files", nargs="+")
    given = arguments.parse_args()
    wrong = [name for name in given.files if not run(name, given)]
    if given.check and wrong:
        sys.exit("not proven: " + " ".join(wrong))


if __name__ == "__main__":
    main()
