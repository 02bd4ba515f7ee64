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
OF_A_SALE = ["sold_on", "sold_price", "sales_tax", "fees", "delivery_charged", "delivery_cost"]


def day(text):
    return date.fromisoformat(text if len(text) == 10 else text + "-01") if text else None


def num(text):
    return F(text) if text else F(0)


def known(name, column):
    """The rows of a table that are known on the day asked about."""
    with open(HERE / f"{name}.csv", encoding="utf-8") as file:
        return [row for row in csv.DictReader(file) if day(row[column]) <= AS_OF]


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
    pieces, hours, uses = known("pieces", "bought_on"), known("hours", "date"), known("uses", "date")
    supplies, trips, money = known("supplies", "bought_on"), known("trips", "date"), known("money", "date")
    for p in pieces:
        if p["sold_on"] and day(p["sold_on"]) > AS_OF:
            p.update(dict.fromkeys(OF_A_SALE, ""))
        for column in ("ready_on", "listed_on", "left_on"):
            if p[column] and day(p[column]) > AS_OF:
                p[column] = ""
    left = {p["id"]: day(p["sold_on"]) or day(p["left_on"]) for p in pieces}
    sold = [p for p in pieces if p["sold_on"]]
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
        if not (i in bench or used or p["ready_on"] or p["listed_on"] or p["sold_on"]):
            continue
        work_day[i] = (day(p["ready_on"]) or day(p["listed_on"]) or day(p["sold_on"])
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
        taken = drawn(bought, own, method) if own else spread(bought, work, [p["id"] for p in pieces])
        for i, when, amount in taken:
            cost[i].append(("supplies", when, amount))
            post(min(when, left[i] or when), "cans", -amount)
    for p in pieces:
        if p["supplies_cost"]:
            ledger = sum(a for kind, _, a in cost[p["id"]] if kind == "supplies")
            cost[p["id"]].append(("supplies", work_day[p["id"]], num(p["supplies_cost"]) - ledger))

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
            post(left[t["id"]], "delivery", whole)
        elif home:
            for i, amount in zip(home, share(whole, [1] * len(home))):
                cost[i].append(("outings", when, amount))
        else:
            post(when, "overheads", whole)

    # Stock: each cost on its day, at the latest the day the piece left, when all of it goes where the piece went.
    for p in pieces:
        i = p["id"]
        for kind, when, amount in cost[i]:
            post(min(when, left[i] or when), "stock", amount)
            if left[i]:
                post(left[i], "stock", -amount)
                if p["sold_on"]:
                    post(left[i], kind, amount)
                elif p["left_as"] != "kept":
                    post(left[i], "written_off", amount)

    # Sales, and whose the money is.
    for p in sold:
        i, when, price, charged = p["id"], left[p["id"]], num(p["sold_price"]), num(p["delivery_charged"])
        mine = cents(price * num(p["commission"])) if p["commission"] else price
        rule = settings["fees"].get(p["channel"])
        fee = num(p["fees"]) if p["fees"] else cents(price * F(rule["rate"])) + F(rule["fixed"])
        post(when, "sales", mine)
        post(when, "delivery_charged", charged)
        post(when, "fees", fee)
        post(when, "delivery", num(p["delivery_cost"]))
        cash(when, -fee)
        cash(when, -num(p["delivery_cost"]))
        post(when, "held_for_tax_office", num(p["sales_tax"]))
        post(when, "held_for_owners_of_pieces", price - mine)
        post(when, "held_for_buyers", -(price + charged + num(p["sales_tax"])))
        if not any(m["kind"] == "payment" and m["id"] == i for m in money):
            post(when, "held_for_buyers", price + charged + num(p["sales_tax"]))
            cash(when, price + charged + num(p["sales_tax"]))
        if not any(m["kind"] == "paid_owner" and m["id"] == i for m in money):
            post(when, "held_for_owners_of_pieces", mine - price)
            cash(when, mine - price)
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


def drawn(bought, uses, method):
    """(piece, day, cost) of each use: first in, first out, or at the average of what is there."""
    bought, layers = sorted(bought, key=lambda s: s["bought_on"]), []
    here = 0
    for u in uses:
        while here < len(bought) and (here == 0 or bought[here]["bought_on"] <= u["date"]):
            s = bought[here]
            layers.append([num(s["quantity"]) * QUARTS[s["unit"]], num(s["price"])])
            here += 1
        if method == "average":
            layers = [[sum(q for q, _ in layers), sum(v for _, v in layers)]]
        if u["quantity"]:
            need = num(u["quantity"]) * QUARTS[u["unit"]]
        else:
            can = [s for s in bought if s["bought_on"] <= u["date"]][-1]
            label = num(can["coverage"]) / QUARTS[can["coverage_unit"].removeprefix("ft2/")]
            need = num(u["area"]) * num(u["coats"]) / label / (1 - F("0.15"))
        assert need <= sum(q for q, _ in layers), u
        cost = F(0)
        while need:
            quantity, value = layers[0]
            part = min(need, quantity)
            taken = value if part == quantity else cents(value * part / quantity)
            need, cost = need - part, cost + taken
            layers[0] = [quantity - part, value - taken]
            if part == quantity:
                layers.pop(0)
        yield u["id"], day(u["date"]), cost


def spread(bought, work, order):
    """
    (piece, day, cost) of what nobody writes down: each purchase by hours over the pieces worked on until the next; the last
    at what the earlier ones cost an hour, at most its price.
    """
    past_cost = past_work = F(0)
    for n, s in enumerate(bought):
        first = day(s["bought_on"])
        end = day(bought[n + 1]["bought_on"]) if n + 1 < len(bought) else date.max
        here = [w for w in work if first <= w[1] < end]
        ids = [i for i in order if any(w[0] == i for w in here)]
        weights = [sum(h for w, _, h in here if w == i) for i in ids]
        price = num(s["price"])
        if end == date.max:
            price = min(price, cents(past_cost * sum(weights) / past_work))
        past_cost, past_work = past_cost + price, past_work + sum(weights)
        for i, amount in zip(ids, share(price, weights)):
            yield i, max(d for w, d, _ in here if w == i), amount


COSTS = ["purchases", "supplies", "outings", "fees", "delivery", "written_off", "tool_wear", "overheads"]


def figures(posted, first, last):
    def flow(account):
        return sum((a for d, name, a in posted if name == account and first <= d <= last), F(0))

    def there(account):
        return sum((a for d, name, a in posted if name == account and d <= last), F(0))

    answer = {name: flow(name) for name in ["sales", "delivery_charged", *COSTS]}
    answer["net"] = answer["sales"] + answer["delivery_charged"] - sum(answer[name] for name in COSTS)
    answer |= {name: flow(name) for name in ("money_in", "money_out")}
    answer["change_of_cash"] = answer["money_in"] - answer["money_out"]
    answer["driving_reckoned"] = flow("driving_reckoned")
    answer |= {f"{name}_closing": there(name) for name in ("stock", "cans", "tools")}
    answer |= {name: there(name) for name in ("held_for_tax_office", "held_for_buyers", "held_for_owners_of_pieces",
                                              "put_in_less_taken")}
    assert all((amount * 100).denominator == 1 for amount in answer.values())
    return {"first": str(first), "last": str(last)} | {name: float(amount) for name, amount in answer.items()}


print(json.dumps({"as_of": str(AS_OF)} | {
    method: [figures(posted, day(first), day(last)) for first, last in SPANS]
    for method in ("fifo", "average") for posted in [books(method)]}, indent=2))
