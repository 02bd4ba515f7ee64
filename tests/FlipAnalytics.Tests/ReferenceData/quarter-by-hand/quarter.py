"""One quarter of a log, the way a careful owner would do it in a spreadsheet: reads the CSV files, uses no code of this
repository. Written from the definitions (README.md here), for logs like data-demo: dates and prices present wherever these
definitions need them, FIFO, supplies used in the unit they were bought in.

    python3 quarter.py ../../../../data-demo 2026-03-31 2026-01-01 2026-03-31 ...   (as of, then first and last days)
"""
import csv, json, sys, tomllib
from collections import defaultdict
from datetime import date, timedelta
from decimal import Decimal as D, ROUND_FLOOR, ROUND_HALF_UP, getcontext

getcontext().prec = 40
CENT = D("0.01")
folder, as_of = sys.argv[1], date.fromisoformat(sys.argv[2])
spans = [(date.fromisoformat(a), date.fromisoformat(b)) for a, b in zip(sys.argv[3::2], sys.argv[4::2])]


def table(name):
    return list(csv.DictReader(open(f"{folder}/{name}.csv", encoding="utf-8-sig")))


def num(text):
    return D(text) if text else None


def day(text):
    return date.fromisoformat(text) if text else None


def cents(amount):
    return amount.quantize(CENT, ROUND_HALF_UP)


def share(amount, weights, unit=CENT):
    """Largest remainder: round down, then a unit each to the largest remainders, the earlier first."""
    if not any(weights):
        weights = [D(1)] * len(weights)
    exact = [amount / unit * w / sum(weights) for w in weights]
    down = [x.to_integral_value(ROUND_FLOOR) for x in exact]
    left = int(amount / unit - sum(down))
    for i in sorted(range(len(weights)), key=lambda i: -(exact[i] - down[i]).quantize(D("1e-20")))[:left]:
        down[i] += 1
    return [x * unit for x in down]


settings = tomllib.load(open(f"{folder}/workshop.toml", "rb"), parse_float=D)
pieces, hours = table("pieces"), table("hours")
uses, supplies, trips = table("uses"), table("supplies"), table("trips")

# --- hours at the bench: pieces.csv, else the sum of hours.csv
entries = defaultdict(list)
for e in hours:
    if e["id"]:
        entries[e["id"]].append((day(e["date"]), D(e["hours"])))
bench = {}
for p in pieces:
    if p["hours"]:
        bench[p["id"]] = D(p["hours"])
    elif entries[p["id"]]:
        bench[p["id"]] = sum(h for _, h in entries[p["id"]])
usual = sum(bench.values()) / len(bench)

# --- which piece was worked on when, and how much
used_on = defaultdict(list)
for u in uses:
    used_on[u["id"]].append(day(u["date"]))
work, work_day, worked = [], {}, []
for p in pieces:
    i = p["id"]
    own = [(d, h) for d, h in entries[i] if h > 0]
    if not (i in bench or used_on[i] or p["ready_on"] or p["listed_on"] or p["asking_price"] or p["sold_on"]):
        continue
    worked.append(i)
    work_day[i] = (day(p["ready_on"]) or day(p["listed_on"]) or day(p["sold_on"]) or max([d for d, _ in own], default=None)
                   or max(used_on[i], default=None) or day(p["left_on"]) or day(p["bought_on"]))
    total, written = bench.get(i, usual), sum(h for _, h in own)
    if written:
        work += [(i, d, h * total / written) for d, h in own]
    else:
        work.append((i, work_day[i], total))
order = {p["id"]: n for n, p in enumerate(pieces)}


def worked_between(first, before):
    """Weight and last day of the pieces worked on from a day to before another, in the order of the log."""
    found = {}
    for i, d, w in work:
        if (first is None or d >= first) and (before is None or d < before):
            weight, last = found.get(i, (D(0), date.min))
            found[i] = (weight + w, max(last, d))
    return [(i, *found[i]) for i in sorted(found, key=order.get)]


# --- supplies: lines of (piece, day, amount); what is written in pieces.csv replaces the sum
lines = defaultdict(list)
by_item = defaultdict(list)
for s in supplies:
    by_item[s["item"]].append(s)
for item, bought in by_item.items():
    bought = sorted(bought, key=lambda s: s["bought_on"])
    own = sorted((u for u in uses if u["item"] == item), key=lambda u: u["date"])
    if own or any(s["coverage"] for s in bought):
        layers, k = [], 0
        for u in own:
            while k < len(bought) and (k == 0 or bought[k]["bought_on"] <= u["date"]):
                layers.append([D(bought[k]["quantity"]), D(bought[k]["price"])])
                k += 1
            if u["quantity"]:
                need = D(u["quantity"])
            else:
                # area x coats / coverage of the last can bought by then / (1 - 15 % loss)
                can = [s for s in bought if s["coverage"] and s["bought_on"] <= u["date"]][-1:] or [s for s in bought if s["coverage"]][:1]
                need = D(u["area"]) * D(u["coats"]) / D(can[0]["coverage"]) / D("0.85")
            cost = D(0)
            if need * (1 + D("1e-9")) >= sum(q for q, _ in layers):
                cost, layers = sum((v for _, v in layers), D(0)), []
            while need > 0 and layers:
                quantity, value = layers[0]
                part = min(need, quantity)
                need -= part
                if quantity <= part * (1 + D("1e-9")):
                    cost += value
                    layers.pop(0)
                else:
                    taken = cents(value * part / quantity)
                    cost += taken
                    layers[0] = [quantity - part, value - taken]
            lines[u["id"]].append((day(u["date"]), cost))
    else:
        # Nobody writes down its uses: each purchase over the pieces worked on until the next, by hours.
        days = sorted({day(s["bought_on"]) for s in bought})
        closed_cost = closed_work = D(0)
        waiting = 0
        for k, _ in enumerate(days):
            is_open = k == len(days) - 1
            here = worked_between(days[waiting], None if is_open else days[k + 1])
            if not here and not is_open:
                continue
            batch = [s for s in bought if days[waiting] <= day(s["bought_on"]) <= days[k]]
            weight, cost = sum(w for _, w, _ in here), sum(D(s["price"]) for s in batch)
            charged = D(0) if not here else cost
            if here and is_open and closed_work:
                charged = min(cost, cents(closed_cost * weight / closed_work))
            if not is_open:
                closed_cost, closed_work = closed_cost + cost, closed_work + weight
            for s in batch:
                part = min(D(s["price"]), charged)
                charged -= part
                if part:
                    for (i, _, last), amount in zip(here, share(part, [w for _, w, _ in here])):
                        lines[i].append((max(last, day(s["bought_on"])), amount))
            waiting = k + 1
stated = {}
for p in pieces:
    if p["supplies_cost"]:
        stated[p["id"]] = D(p["supplies_cost"]) - sum(a for _, a in lines[p["id"]])

# --- outings
home = defaultdict(list)
for p in pieces:
    if p["trip"]:
        home[p["trip"]].append(p["id"])
rates = sorted((date.fromisoformat(str(d)), D(str(r))) for d, r in settings["mileage"].items())
outing, outing_hours, fruitless, driving, away = {}, defaultdict(D), [], [], defaultdict(D)
general, fruitful = [], []
for t in trips:
    d = day(t["date"])
    drive = cents(D(t["distance"]) * [r for start, r in rates if start <= d][-1])
    cost = drive + (num(t["other_cost"]) or 0)
    driving.append((d, drive, num(t["other_cost"]) or D(0)))
    h = num(t["hours"]) or D(0)
    away[d] += h
    if home[t["trip"]]:
        n = len(home[t["trip"]])
        fruitful.append((d, h))
        for i, c, x in zip(home[t["trip"]], share(cost, [D(1)] * n), share(h, [D(1)] * n)):
            outing[i] = (d, c)
            outing_hours[i] += x
    else:
        fruitless.append((d, cost))
        general.append((d, h))
for e in hours:
    if not e["id"]:
        d, h = day(e["date"]), D(e["hours"])
        if e["task"] == "sourcing" and d in away:
            h, away[d] = max(D(0), h - away[d]), max(D(0), away[d] - h)
        general.append((d, h))

# --- what a piece had cost on an evening; each cost on its day, at the latest the day the piece left
left_on = {p["id"]: day(p["sold_on"]) or day(p["left_on"]) for p in pieces}


def costs(p):
    i = p["id"]
    all_lines = [("purchase", day(p["bought_on"]), D(p["bought_price"]))]
    all_lines += [("supplies", d, a) for d, a in lines[i]]
    if i in stated:
        all_lines.append(("stated", work_day[i], stated[i]))
    if i in outing:
        all_lines.append(("outing", *outing[i]))
    return [(kind, min(d, left_on[i]) if left_on[i] else d, a) for kind, d, a in all_lines]


def stock(evening):
    return sum((a for p in pieces if not left_on[p["id"]] or left_on[p["id"]] > evening
                for _, d, a in costs(p) if d <= evening), D(0))


def cans(evening):
    return (sum(D(s["price"]) for s in supplies if day(s["bought_on"]) <= evening)
            - sum((a for p in pieces for kind, d, a in costs(p) if kind == "supplies" and d <= evening), D(0)))


# --- wear of tools: straight line over pieces worked on or months begun, to salvage
wear = []
for t in table("tools"):
    price, salvage, bought = D(t["price"]), num(t["salvage"]) or D(0), day(t["bought_on"])
    if t["life_pieces"]:
        life = D(t["life_pieces"])
        days = sorted(work_day[i] for i in worked if work_day[i] >= bought)[:int(life)]
    else:
        life, days, m = D(t["life_months"]), [bought], bought
        while len(days) < life:
            m = date(m.year + m.month // 12, m.month % 12 + 1, 1)
            if m > as_of:
                break
            days.append(m)
    done = D(0)
    for n, d in enumerate(days, 1):
        now = cents((price - salvage) * min(D(n), life) / life)
        wear.append((d, now - done))
        done = now


def fee(p):
    if p["fees"]:
        return D(p["fees"])
    rule = settings["fees"].get(p["channel"])
    return cents(cents(D(p["sold_price"]) * D(str(rule["rate"]))) + D(str(rule["fixed"]))) if rule else D(0)


def quarter(first, last):
    def within(d):
        return d is not None and first <= d <= last

    before = first - timedelta(1)
    sold = [p for p in pieces if within(day(p["sold_on"]))]
    gone = [p for p in pieces if within(day(p["left_on"])) and p["left_as"] != "kept"]

    def of(kinds, some):
        return sum((a for p in some for kind, _, a in costs(p) if kind in kinds), D(0))

    over = [D(o["amount"]) for o in table("overheads") if within(day(o["month"] + "-01"))]
    answer = {
        "sales": sum(D(p["sold_price"]) for p in sold),
        "delivery_charged": sum(num(p["delivery_charged"]) or D(0) for p in sold),
        "purchases": of(("purchase",), sold),
        "supplies": of(("supplies", "stated"), sold),
        "outings": of(("outing",), sold),
        "fees": sum(fee(p) for p in sold),
        "delivery": sum(num(p["delivery_cost"]) or D(0) for p in sold),
        "written_off": of(("purchase", "supplies", "stated", "outing"), gone),
        "tool_wear": sum(a for d, a in wear if within(d)),
        "overheads": sum(over) + sum(c for d, c in fruitless if within(d)),
    }
    answer["net"] = (answer["sales"] + answer["delivery_charged"]
                     - sum(v for k, v in answer.items() if k not in ("sales", "delivery_charged")))
    answer |= {
        "money_in": answer["sales"] + answer["delivery_charged"],
        "money_out": sum(D(p["bought_price"]) for p in pieces if within(day(p["bought_on"])))
        + sum(D(s["price"]) for s in supplies if within(day(s["bought_on"])))
        + sum(D(t["price"]) for t in table("tools") if within(day(t["bought_on"])))
        + sum(other for d, _, other in driving if within(d)) + sum(over) + answer["fees"] + answer["delivery"],
        "driving_reckoned": sum(c for d, c, _ in driving if within(d)),
        "stock_opening": stock(before), "stock_closing": stock(last),
        "cans_opening": cans(before), "cans_closing": cans(last),
        "tools_opening": sum(D(t["price"]) for t in table("tools") if day(t["bought_on"]) <= before)
        - sum(a for d, a in wear if d <= before),
        "tools_closing": sum(D(t["price"]) for t in table("tools") if day(t["bought_on"]) <= last)
        - sum(a for d, a in wear if d <= last),
        "bench_hours_of_sold": sum(bench.get(p["id"], D(0)) for p in sold),
        "outing_hours_of_sold": sum(outing_hours[p["id"]] for p in sold if p["id"] in bench),
        "written_off_hours": sum(bench.get(p["id"], D(0)) + outing_hours[p["id"]] for p in gone),
        "general_hours": sum(h for d, h in general if within(d)),
        "hours_worked": sum(h for d, h in general + fruitful if within(d))
        + sum(w for i, d, w in work if i in bench and within(d)),
    }
    return {"first": str(first), "last": str(last), "pieces_sold": len(sold)} | {
        key: float(round(value, 6)) for key, value in answer.items()}


print(json.dumps({"as_of": str(as_of), "quarters": [quarter(*span) for span in spans]}, indent=2))
