"""Finds the best plan of each stored choice of pairings with HiGHS (scipy), and
compares its score with the stored one.

Nothing is shared with the program under test: kinships come from the table that is
filled in animal by animal (Emik and Terrill 1949, Journal of Heredity 40:51), and the
score from adding the kinships up. A binary variable stands for each pair and each
number of its young; products of two of them are made linear as by Glover (1975,
Management Science 22:455).
"""

import json
import sys

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp


def table(records):
    at = {r["ID"]: i for i, r in enumerate(records)}
    k = np.zeros((len(records), len(records)))
    for i, r in enumerate(records):  # parents come first
        s, d = at.get(r["Sire"]), at.get(r["Dam"])
        for j in range(i):
            k[i, j] = k[j, i] = sum(k[p, j] for p in (s, d) if p is not None) / 2
        k[i, i] = (1 + (k[s, d] if s is not None and d is not None else 0)) / 2
    return at, k


def solve(c):
    at, k = table(c["records"])
    pool = [at[i] for i in c["pool"]]
    parents = [(at[p["sire"]], at[p["dam"]]) for p in c["pairs"]]
    young, size = c["young"], len(pool) + c["young"]

    def between(p, q):
        return sum(k[a, b] for a in parents[p] for b in parents[q]) / 4

    options = [(p, v) for p, pair in enumerate(c["pairs"]) for v in range(pair["least"], pair["most"] + 1)]
    n, pairs = len(options), len(parents)
    cost = np.zeros(2 * n)  # whether an option is taken; then, what its young add with those of other pairs
    for o, (p, v) in enumerate(options):
        inbreeding = k[parents[p]]
        to_pool = sum(k[a, m] for a in parents[p] for m in pool) / 2
        total = 2 * v * to_pool + v * (1 + inbreeding) / 2 + v * (v - 1) * between(p, p)
        cost[o] = total / size**2 + c["weight"] * v * inbreeding / young
        cost[n + o] = v / size**2
    rows, low, high = [], [], []

    def add(row, least, most):
        rows.append(row), low.append(least), high.append(most)

    def count(chosen, weigh=lambda v: 1):
        row = np.zeros(2 * n)
        for o, (p, v) in enumerate(options):
            if p in chosen:
                row[o] = weigh(v)
        return row

    for p in range(pairs):
        add(count({p}), 0, 1)
    add(count(set(range(pairs)), lambda v: v), young, young)
    for limit in c["limits"]:
        add(count(set(limit["pairs"])), limit["at_least"], limit["at_most"])
    for o, (p, v) in enumerate(options):
        row = np.zeros(2 * n)
        others = [(i, w * between(p, q)) for i, (q, w) in enumerate(options) if q != p]
        for i, x in others:
            row[i] = -x
        big = young * max((between(p, q) for q in range(pairs)), default=0)
        row[n + o] = 1
        row[o] -= big
        add(row, -big, np.inf)  # the product is at least the sum over the others when the option is taken
    kinds = np.concatenate([np.ones(n), np.zeros(n)])
    bounds = Bounds(np.zeros(2 * n), np.concatenate([np.ones(n), np.full(n, np.inf)]))
    found = milp(cost, constraints=LinearConstraint(np.array(rows), low, high), integrality=kinds, bounds=bounds,
                 options={"mip_rel_gap": 0})
    if found.status == 2:
        return None
    if found.status != 0:
        raise RuntimeError(found.message)
    return found.fun + sum(k[a, b] for a in pool for b in pool) / size**2


def main():
    with open(sys.argv[1], encoding="utf-8") as f:
        choices = json.load(f)
    wrong = 0
    for i, c in enumerate(choices):
        best = solve(c)
        agrees = (best is not None) == c["feasible"] and (best is None or abs(best - c["score"]) < 1e-7)
        wrong += not agrees
        if not agrees:
            print(f"choice {i}: {best}, but {c['score']} is stored (feasible: {c['feasible']})")
    feasible = sum(c["feasible"] for c in choices)
    print(f"HiGHS agrees on {len(choices) - wrong} of {len(choices)} choices, {feasible} of them with a plan")
    return wrong > 0


sys.exit(main())
