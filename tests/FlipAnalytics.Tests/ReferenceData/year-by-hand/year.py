"""A year of books, worked out a second time from the CSV files of this folder. It uses no code of this repository: every
definition is in README.md. Amounts are exact fractions until a rule says that they are rounded.

    python3 year.py > answers.json

Everything that happens is posted as (day, account, amount); a figure of a span is the sum of its days, what is there on an
evening is the sum of all days up to it.
"""
import csv, json, tomllib
from calendar import monthrange
from collections import defaultdict
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction as F
from pathlib import Path

HERE = Path(__file__).parent
AS_OF = date(2026, 2, 28)
SPANS = [("2025-01-01", "2025-03-31"), ("2025-04-01", "2025-06-30"), ("2025-07-01", "2025-09-30"),
         ("2025-10-01", "2025-12-31"), ("2025-01-01", "2025-12-31"), ("2025-03-01", "2025-03-14")]
QUARTS = {"pint": F(1, 2), "quart": F(1), "gallon": F(4), "each": F(1), "sheet": F(1)}
OF_A_SALE = ["sold_price", "sales_tax", "fees", "delivery_charged", "delivery_cost"]


def day(text):
    return date.fromisoformat(text if len(text) == 10 else text + "-01") if text else None


def num(text):
    return F(text) if text else F(0)


def known(name, column):
    """The rows of a table that are known on the day asked about."""
    with open(HERE / f"{name}.csv", encoding="utf-8") as file:
        return [row for row in csv.DictReader(file) if day(row[column]) <= AS_OF]


def known_pieces():
    """
    The pieces known on the day asked about, with the sales of each in order. A sale that was undone is in returns.csv; the last
    one, if it stands, in pieces.csv. "here" are the spans of days a piece was the workshop's: (first, last or none).
    """
    with open(HERE / "returns.csv", encoding="utf-8") as file:
        undone = sorted((r for r in csv.DictReader(file) if r["sold_on"]), key=lambda r: r["sold_on"])
    pieces = known("pieces", "bought_on")
    for p in pieces:
        p["sales"] = [{"on": day(r["sold_on"]), "back": day(r["returned_on"]) if day(r["returned_on"]) <= AS_OF else None,
                       "taking_back": num(r["cost"]), "refund": num(r["refund"])} | {name: r[name] for name in OF_A_SALE}
                      for r in undone if r["id"] == p["id"]]
        if p["sold_on"]:
            p["sales"].append({"on": day(p["sold_on"]), "back": None} | {name: p[name] for name in OF_A_SALE})
        p["sales"] = [s for s in p["sales"] if s["on"] <= AS_OF]
        for column in ("ready_on", "listed_on", "left_on"):
            if p[column] and day(p[column]) > AS_OF:
                p[column] = ""
        first = day(p["bought_on"])
        p["here"] = []
        for s in p["sales"]:
            p["here"].append((first, s["on"]))
            first = s["back"]
        if first:
            p["here"].append((first, day(p["left_on"])))
    return pieces


def counted_on(p, when):
    """The day on which something of a piece counts: its own, or the day the piece went, when it was away then."""
    return max(min(when, last or when) for first, last in p["here"] if first <= when or first == p["here"][0][0])


def cents(amount):
    """Half a cent is one, away from zero."""
    whole = int(abs(amount) * 100 + F(1, 2))
    return F(whole if amount >= 0 else -whole, 100)


def share(amount, weights):
    """Whole cents by largest remainder: each rounded down, the cents left to the largest remainders, ties to the earlier."""
    exact = [amount * 100 * w / sum(weights) for w in weights]
    down = [x.numerator // x.denominator for x in exact]
    left = int(amount * 100) - sum(down)
    for i in sorted(range(len(exact)), key=lambda i: (down[i] - exact[i], i))[:left]:
        down[i] += 1
    return [F(x, 100) for x in down]


def by_days(amount, first, last):
    """(day, cents) of an amount that arises evenly: what has arisen by each evening is rounded, the day has the difference."""
    days, before = (last - first).days + 1, F(0)
    for n in range(1, days + 1):
        now = cents(amount * n / days)
        yield first + timedelta(n - 1), now - before
        before = now


def books(method):
    posted = []

    def post(when, account, amount):
        if amount:
            posted.append((when, account, amount))

    def cash(when, amount):
        post(when, "money_in" if amount > 0 else "money_out", abs(amount))

    with open(HERE / "workshop.toml", "rb") as file:
        settings = tomllib.load(file, parse_float=Decimal)
    pieces, hours, uses = known_pieces(), known("hours", "date"), known("uses", "date")
    supplies, trips, money = known("supplies", "bought_on"), known("trips", "date"), known("money", "date")
    counts, differences = known("counts", "date"), []
    of = {p["id"]: p for p in pieces}
    cost = defaultdict(list)  # by piece: (account, day, amount)

    # Purchases. The sum for a lot is shared by expected price. What belongs to somebody else costs nothing.
    paid = {p["id"]: num(p["bought_price"]) for p in pieces}
    for lot in {p["lot"] for p in pieces} - {""}:
        of_lot = [p for p in pieces if p["lot"] == lot]
        shares = share(sum(paid[p["id"]] for p in of_lot), [num(p["expected_price"]) for p in of_lot])
        paid.update(zip((p["id"] for p in of_lot), shares))
    for p in pieces:
        cost[p["id"]].append(("purchases", day(p["bought_on"]), paid[p["id"]]))
        cash(day(p["bought_on"]), -paid[p["id"]])
    for m in known("moves", "date"):
        cost[m["from"]].append(("purchases", day(m["date"]), -num(m["cost"])))
        cost[m["to"]].append(("purchases", day(m["date"]), num(m["cost"])))

    # Work: on the days of hours.csv, scaled to the hours in pieces.csv; without entries on the day the piece was ready.
    entries = {p["id"]: [(day(h["date"]), num(h["hours"])) for h in hours if h["id"] == p["id"]] for p in pieces}
    bench = {p["id"]: num(p["hours"]) or sum(h for _, h in entries[p["id"]]) for p in pieces}
    bench = {i: h for i, h in bench.items() if h}
    usual = sum(bench.values()) / len(bench)
    work, work_day = [], {}
    for p in pieces:
        i = p["id"]
        used = [day(u["date"]) for u in uses if u["id"] == i]
        if not (i in bench or used or p["ready_on"] or p["listed_on"] or p["sales"]):
            continue
        work_day[i] = (day(p["ready_on"]) or day(p["listed_on"]) or (p["sales"][0]["on"] if p["sales"] else None)
                       or max([d for d, _ in entries[i]] or used))
        written = sum(h for _, h in entries[i])
        work += ([(i, d, h * bench[i] / written) for d, h in entries[i]] if written
                 else [(i, work_day[i], bench.get(i, usual))])

    # Supplies.
    for s in supplies:
        post(day(s["bought_on"]), "cans", num(s["price"]))
        cash(day(s["bought_on"]), -num(s["price"]))
    for item in dict.fromkeys(s["item"] for s in supplies):
        bought = [s for s in supplies if s["item"] == item]
        own = sorted((u for u in uses if u["item"] == item), key=lambda u: u["date"])
        counted = counts_of(item, counts)
        taken = drawn(bought, own, counted, method) if own else spread(bought, counted, work, [p["id"] for p in pieces])
        before = None
        for i, when, amount in taken:
            if i == COUNT:
                post(when, "cans", -amount)
                differences.append((when, before, day(bought[0]["bought_on"]), amount))
                before = when
            elif i == "":
                post(when, "cans", -amount)
                post(when, "supplies_lost", amount)
            else:
                cost[i].append(("supplies", when, amount))
                post(counted_on(of[i], when), "cans", -amount)
    stated = []  # [day, amount beyond what cans were charged for]
    for p in pieces:
        if p["supplies_cost"]:
            ledger = sum(a for kind, _, a in cost[p["id"]] if kind == "supplies")
            stated.append([work_day[p["id"]], num(p["supplies_cost"]) - ledger])
            cost[p["id"]].append(("supplies", *stated[-1]))
    # What a count found missing is what pieces worked on since the count before state to have used; the rest is lost.
    for when, before, since, amount in sorted(differences, key=lambda d: d[0]):
        for s in sorted(stated, key=lambda s: s[0]):
            if since <= s[0] <= when and not (before and s[0] <= before) and s[1] * amount > 0:
                part = min(s[1], amount, key=abs)
                s[1], amount = s[1] - part, amount - part
        post(when, "supplies_lost", amount)

    # Outings.
    rates = sorted((day(start), F(rate)) for start, rate in settings["mileage"].items())
    for t in trips:
        when = day(t["date"])
        drive = cents(num(t["distance"]) * [rate for start, rate in rates if start <= when][-1])
        whole = drive + num(t["other_cost"])
        post(when, "driving_reckoned", drive)
        cash(when, -num(t["other_cost"]))
        home = [p["id"] for p in pieces if p["trip"] == t["trip"]]
        if t["purpose"] == "delivery" and t["id"]:
            post(driven_for(of[t["id"]], when), "delivery", whole)
        elif home:
            for i, amount in zip(home, share(whole, [1] * len(home))):
                cost[i].append(("outings", when, amount))
        else:
            post(when, "overheads", whole)

    # Stock: each cost on its day, at the latest the day the piece left, when all of it goes where the piece went, and comes back
    # with the piece.
    for p in pieces:
        for kind, when, amount in cost[p["id"]]:
            on = counted_on(p, when)
            post(on, "stock", amount)
            for s in p["sales"]:
                if on <= s["on"]:
                    post(s["on"], "stock", -amount)
                    post(s["on"], kind, amount)
                    if s["back"]:
                        post(s["back"], "stock", amount)
                        post(s["back"], kind, -amount)
            if p["left_on"]:
                post(day(p["left_on"]), "stock", -amount)
                if p["left_as"] != "kept":
                    post(day(p["left_on"]), "written_off", amount)

    # Sales and what was given back, and whose the money is.
    def owner(p, when, amount):
        """Of a piece of somebody else: what its owner has earned, or lost again."""
        post(when, "held_for_owners_of_pieces", amount)
        if not any(m["kind"] == "paid_owner" and m["id"] == p["id"] for m in money):
            post(when, "held_for_owners_of_pieces", -amount)
            cash(when, -amount)

    def mine_of(p, amount):
        return cents(amount * num(p["commission"])) if p["commission"] else amount

    def give_back(p, when, refund, tax, lapsed, of_owner, expense):
        """The refund and the tax are paid out; what the buyer no longer owes is given back without money."""
        post(when, "delivery", expense)
        cash(when, -expense)
        post(when, "returns", refund + lapsed - of_owner)
        post(when, "held_for_tax_office", -tax)
        post(when, "held_for_buyers", lapsed)
        cash(when, -refund - tax)
        owner(p, when, -of_owner)

    for p in pieces:
        payments = [(day(m["date"]), num(m["amount"])) for m in money if m["kind"] == "payment" and m["id"] == p["id"]]
        for s in p["sales"]:
            when, price, charged, tax = s["on"], num(s["sold_price"]), num(s["delivery_charged"]), num(s["sales_tax"])
            mine = mine_of(p, price)
            rule = settings["fees"].get(p["channel"])
            fee = num(s["fees"]) if s["fees"] or s["back"] else cents(price * F(rule["rate"])) + F(rule["fixed"])
            paid = [amount for d, amount in payments if not s["back"] or d <= s["back"]]
            payments = payments[len(paid):]
            post(when, "sales", mine)
            post(when, "delivery_charged", charged)
            post(when, "fees", fee)
            post(when, "delivery", num(s["delivery_cost"]))
            cash(when, -fee)
            cash(when, -num(s["delivery_cost"]))
            post(when, "held_for_tax_office", tax)
            post(when, "held_for_buyers", -(price + charged + tax))
            if not paid:
                post(when, "held_for_buyers", price + charged + tax)
                cash(when, price + charged + tax)
            owner(p, when, price - mine)
            if s["back"]:
                lapsed = price + charged + tax - sum(paid) if paid else F(0)
                give_back(p, s["back"], s["refund"], tax, lapsed, price - mine, s["taking_back"])
    for r in known("returns", "returned_on"):
        if not r["sold_on"]:
            p, refund = of[r["id"]], num(r["refund"])
            give_back(p, day(r["returned_on"]), refund, num(r["sales_tax"]), F(0), refund - mine_of(p, refund), num(r["cost"]))
    for m in money:
        account, sign = {"payment": ("held_for_buyers", 1), "sales_tax": ("held_for_tax_office", -1),
                         "paid_owner": ("held_for_owners_of_pieces", -1), "taken": ("put_in_less_taken", -1),
                         "put_in": ("put_in_less_taken", 1)}[m["kind"]]
        post(day(m["date"]), account, sign * num(m["amount"]))
        cash(day(m["date"]), sign * num(m["amount"]))

    # Tools: straight line to salvage over months begun, each over its days, or over pieces worked on, each on its day.
    for t in known("tools", "bought_on"):
        first, done = day(t["bought_on"]), F(0)
        post(first, "tools", num(t["price"]))
        cash(first, -num(t["price"]))
        life = int(t["life_pieces"] or t["life_months"])
        if t["life_pieces"]:
            parts = [(d, d) for d in sorted(d for d in work_day.values() if d >= first)]
        else:
            parts, d = [], first
            while d <= AS_OF:
                parts.append((d, d.replace(day=monthrange(d.year, d.month)[1])))
                d = parts[-1][1] + timedelta(1)
        for n, (start, end) in enumerate(parts[:life], 1):
            worn = cents((num(t["price"]) - num(t["salvage"])) * n / life)
            for when, amount in by_days(worn - done, start, end):
                post(when, "tool_wear", amount)
                post(when, "tools", -amount)
            done = worn
    for o in known("overheads", "month"):
        first = day(o["month"])
        cash(first, -num(o["amount"]))
        for when, amount in by_days(num(o["amount"]), first, first.replace(day=monthrange(first.year, first.month)[1])):
            post(when, "overheads", amount)
    return posted


COUNT = "count"


def driven_for(p, when):
    """
    The day on which a drive to or from a buyer counts: of the sale of the buyer who has the piece, or to whom it goes next; from
    the day it came back on, with no sale yet, that of the return.
    """
    before = [s for s in p["sales"] if s["on"] <= when]
    if before and before[-1]["back"] and before[-1]["back"] <= when:
        return before[-1]["back"]
    return before[-1]["on"] if before else p["sales"][0]["on"]


def counts_of(item, counts):
    """(day, what is left) of each count, in quarts or pieces; rows of one day add up."""
    own = [c for c in counts if c["item"] == item]
    for when in sorted({c["date"] for c in own}):
        yield when, sum(F(0) if c["quantity"] == "empty" else num(c["quantity"]) * QUARTS[c["unit"]]
                        for c in own if c["date"] == when)


def drawn(bought, uses, counts, method):
    """
    (piece, day, cost) of each use, first in, first out, or at the average of what is there; no piece for waste. A count sets what
    is left on its evening: what is missing is taken like a use, what is found is put back at its part of what its can had cost.
    """
    bought, layers, gone = sorted(bought, key=lambda s: s["bought_on"]), [], []
    here = 0
    for when, left, u in sorted([(u["date"], -1, u) for u in uses] + [(d, q, None) for d, q in counts],
                                key=lambda e: (e[0], e[2] is None)):
        while here < len(bought) and (here == 0 or bought[here]["bought_on"] <= when):
            s = bought[here]
            layers.append([num(s["quantity"]) * QUARTS[s["unit"]], num(s["price"])])
            here += 1
        if method == "average":
            layers = [[sum(q for q, _ in layers), sum(v for _, v in layers)]]
        if u is None:
            need = sum(q for q, _ in layers) - left
        elif u["quantity"]:
            need = num(u["quantity"]) * QUARTS[u["unit"]]
        else:
            can = [s for s in bought if s["bought_on"] <= when][-1]
            label = num(can["coverage"]) / QUARTS[can["coverage_unit"].removeprefix("ft2/")]
            need = num(u["area"]) * num(u["coats"]) / label / (1 - F("0.15"))
        assert need <= sum(q for q, _ in layers), u
        if need < 0:
            quantity, value = layers[0] if method == "average" else gone[-1]
            assert -need <= quantity
            found = cents(value * -need / quantity)
            layers[0] = [layers[0][0] - need, layers[0][1] + found]
            yield COUNT, day(when), -found
            continue
        cost = F(0)
        while need:
            quantity, value = layers[0]
            part = min(need, quantity)
            taken = value if part == quantity else cents(value * part / quantity)
            need, cost = need - part, cost + taken
            gone.append((part, taken))
            layers[0] = [quantity - part, value - taken]
            if part == quantity:
                layers.pop(0)
        yield COUNT if u is None else u["id"], day(when), cost


def spread(bought, counts, work, order):
    """
    (piece, day, cost) of what nobody writes down: each purchase by hours over the pieces worked on until the next; the last
    at what the earlier ones cost an hour, at most its price. A count cuts a purchase in two: what was used up by its evening, and
    the rest from the next day on.
    """
    batches = [(day(s["bought_on"]), num(s["quantity"]), num(s["price"])) for s in bought]
    for when, left in counts:
        n = max(n for n, (first, _, _) in enumerate(batches) if first <= day(when))
        assert n == 0, "a count of several purchases"
        first, quantity, price = batches[0]
        used = cents(price * (quantity - left) / quantity)
        batches[0:1] = [(first, quantity - left, used), (day(when) + timedelta(1), left, price - used)]
    past_cost = past_work = F(0)
    for n, (first, _, price) in enumerate(batches):
        end = batches[n + 1][0] if n + 1 < len(batches) else date.max
        here = [w for w in work if first <= w[1] < end]
        ids = [i for i in order if any(w[0] == i for w in here)]
        weights = [sum(h for w, _, h in here if w == i) for i in ids]
        if end == date.max:
            price = min(price, cents(past_cost * sum(weights) / past_work))
        past_cost, past_work = past_cost + price, past_work + sum(weights)
        for i, amount in zip(ids, share(price, weights)):
            yield i, max(d for w, d, _ in here if w == i), amount


def rent_of_channels():
    """What each piece bears of the rent of its channel, by its days for sale there in the month; without any, nobody does."""
    borne = defaultdict(F)
    pieces = [p for p in known_pieces() if p["listed_on"]]
    for o in known("overheads", "month"):
        if not o["channel"]:
            continue
        first = day(o["month"])
        last = min(first.replace(day=monthrange(first.year, first.month)[1]), AS_OF)
        days = {}
        for p in pieces:
            there = sum(max((min(end or AS_OF, last) - max(start, day(p["listed_on"]), first)).days + 1, 0)
                        for start, end in p["here"])
            if p["channel"] == o["channel"] and there:
                days[p["id"]] = there
        if days:
            for i, amount in zip(days, share(num(o["amount"]), list(days.values()))):
                borne[i] += amount
        else:
            borne["nobody"] += num(o["amount"])
    return {i: float(amount) for i, amount in borne.items()}


def net_deliveries():
    """What delivery cost less what was charged, of each sale that stands with either: written down, or driven to the buyer."""
    with open(HERE / "workshop.toml", "rb") as file:
        rates = sorted((day(start), F(rate)) for start, rate in tomllib.load(file, parse_float=Decimal)["mileage"].items())
    net = {}
    for p in known_pieces():
        for s in p["sales"]:
            drives = [t for t in known("trips", "date") if t["purpose"] == "delivery" and t["id"] == p["id"]
                      and driven_for(p, day(t["date"])) == s["on"]]
            if not s["back"] and (s["delivery_cost"] or s["delivery_charged"] or drives):
                net[p["id"]] = num(s["delivery_cost"]) - num(s["delivery_charged"]) + sum(
                    cents(num(t["distance"]) * [rate for start, rate in rates if start <= day(t["date"])][-1]) + num(t["other_cost"])
                    for t in drives)
    return {i: float(amount) for i, amount in net.items()}


COSTS = ["purchases", "supplies", "outings", "fees", "delivery", "written_off", "tool_wear", "overheads", "supplies_lost"]


def figures(posted, first, last):
    def flow(account):
        return sum((a for d, name, a in posted if name == account and first <= d <= last), F(0))

    def there(account):
        return sum((a for d, name, a in posted if name == account and d <= last), F(0))

    answer = {name: flow(name) for name in ["sales", "delivery_charged", "returns", *COSTS]}
    answer["net"] = answer["sales"] + answer["delivery_charged"] - answer["returns"] - sum(answer[name] for name in COSTS)
    answer |= {name: flow(name) for name in ("money_in", "money_out")}
    answer["change_of_cash"] = answer["money_in"] - answer["money_out"]
    answer["driving_reckoned"] = flow("driving_reckoned")
    answer |= {f"{name}_closing": there(name) for name in ("stock", "cans", "tools")}
    answer |= {name: there(name) for name in ("held_for_tax_office", "held_for_buyers", "held_for_owners_of_pieces",
                                              "put_in_less_taken")}
    assert all((amount * 100).denominator == 1 for amount in answer.values())
    return {"first": str(first), "last": str(last)} | {name: float(amount) for name, amount in answer.items()}


print(json.dumps({"as_of": str(AS_OF), "rent_of_channels": rent_of_channels(), "net_deliveries": net_deliveries()} | {
    method: [figures(posted, day(first), day(last)) for first, last in SPANS]
    for method in ("fifo", "average") for posted in [books(method)]}, indent=2))
