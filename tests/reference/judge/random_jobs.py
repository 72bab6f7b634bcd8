"""Random small procedures: a random map, a job on it that is right by the way it is built, then spoiled or not.

The same seed gives the same files. Titles say what was spoiled.
"""

import copy
import random

from appliance import GAS, HEATING, MAINS, SUPPLY
from paper import Paper

SNUG = {"method": "screwdriver, snug"}

MIXTURES = (
    (MAINS,),
    (HEATING,),
    (GAS,),
    (MAINS, HEATING),
    (MAINS, HEATING),
    (MAINS, GAS),
    (MAINS, GAS),
    (HEATING, GAS),
)


class Job:
    """A random appliance and the right job on it."""

    def __init__(self, rng, name):
        self.rng = rng
        self.paper = Paper(name, "")
        self.kinds = rng.choice(MIXTURES)
        self.connections_of = {}
        self.draw_circuits()
        self.draw_parts()
        self.draw_connections()

    def chance(self, probability):
        return self.rng.random() < probability

    # --- the map -----------------------------------------------------------------------------------------

    def draw_circuits(self):
        paper = self.paper
        if MAINS in self.kinds:
            paper.circuit("mains", MAINS, [("mains_u", "mains of the unit")])
            self.feeds = ["spur"]
            paper.isolator("spur", "wall switch", (SUPPLY, "mains_u"), "switch")
            if self.chance(0.3):
                self.feeds.append("spur2")
                paper.isolator("spur2", "timer switch", (SUPPLY, "mains_u"), "switch")
        if HEATING in self.kinds:
            self.draw_heating()
        if GAS in self.kinds:
            self.draw_gas()

    def draw_heating(self):
        paper = self.paper
        self.valves = ["va"]
        if self.chance(0.75):
            paper.circuit("heating", HEATING, [("system", "heating system"), ("body", "unit body")])
            paper.isolator("va", "flow valve", ("system", "body"), "valve")
            if self.chance(0.6):
                self.valves.append("vb")
                paper.isolator("vb", "return valve", ("system", "body"), "valve")
        else:
            paper.circuit("heating", HEATING, [("body", "unit body")])
            paper.isolator("va", "filling valve", (SUPPLY, "body"), "valve")
        paper.connection("vent", "vent screw", "joint", section="body", port="vent")
        self.drains = self.chance(0.6)
        if self.drains:
            paper.connection("drain", "drain cock", "joint", section="body", port="drain")

    def draw_gas(self):
        paper = self.paper
        sections = [("house", "house side"), ("inlet", "gas inlet"), ("burner", "burner side")]
        if self.chance(0.4):
            sections = sections[1:]
        paper.circuit("gas", GAS, sections)
        if len(sections) == 3:
            paper.isolator("mv", "meter valve", (SUPPLY, "house"), "valve")
        paper.isolator("gv", "gas cock", ("house" if len(sections) == 3 else SUPPLY, "inlet"), "valve")
        paper.isolator("auto", "automatic valve", ("inlet", "burner"), "automatic")
        self.shut_off = ["gv"] if len(sections) < 3 or self.chance(0.7) else ["mv", "gv"]
        paper.connection("tp", "test point", "joint", section="inlet", port="test")
        paper.item("gauge", "gauge", on="tp", closes=True, gauge=True)
        self.bonded = self.chance(0.4)
        self.gauged = self.chance(0.5)

    def draw_parts(self):
        """One to three parts; each may stand behind those before it, and the last is the one to be reached."""
        names = ["front cover", "inner shield", "unit"]
        self.parts = ["cover", "shield", "unit"][3 - self.rng.randint(1, 3) :]
        names = names[3 - len(self.parts) :]
        self.front = {}
        for n, part in enumerate(self.parts):
            behind = [other for other in self.parts[:n] if self.chance(0.7)]
            self.front[part] = {f for b in behind for f in (b, *self.front[b])}
            self.paper.component(part, names[n], behind)
        target = self.parts[-1]
        self.stripped = [p for p in self.parts if p == target or p in self.front[target]]

    def draw_connections(self):
        """Two to four connections besides ports: one a circuit at the last part, the rest drawn."""
        target = self.parts[-1]
        left = self.rng.randint(2, 4)
        for kind in self.kinds:
            self.connect(kind, target)
            left -= 1
        for part in self.parts[:-1]:
            if left:
                plug = MAINS in self.kinds and self.chance(0.2)
                self.connect(MAINS if plug else None, part)
                left -= 1
        while left:
            self.connect(self.rng.choice([*self.kinds, None]), target)
            left -= 1

    def connect(self, kind, part):
        n = sum(map(len, self.connections_of.values()))
        k = f"k{n}"
        more = {"reached_after": []} if kind in (HEATING, GAS) and self.chance(0.45) else {}
        if kind is None:
            count = self.rng.randint(1, 4)
            self.paper.connection(k, f"{part} screws", "fixing", [part], count=count, **more)
        elif kind == MAINS:
            if part == "unit" and self.chance(0.4):
                self.paper.connection(k, f"unit terminals {n}", "joint", [part], "mains_u", 3, tight=SNUG)
            else:
                self.paper.connection(k, f"{part} plug {n}", "connector", [part], "mains_u")
        elif kind == HEATING:
            count = self.rng.choice((1, 1, 4))
            self.paper.connection(k, f"water union {n}", "joint", [part], "body", count, True, **more)
        else:
            if self.bonded:
                more["bond"] = True
                self.paper.item(f"bond_{k}", f"bond {n}", bonds=k)
            self.paper.connection(k, f"gas union {n}", "joint", [part], "inlet", 1, True, **more)
        self.connections_of.setdefault(part, []).append(k)

    # --- the right job -----------------------------------------------------------------------------------

    def plan(self, connection):
        return next(k for k in self.paper.connections if k["id"] == connection)

    def is_mains(self, connection):
        return self.plan(connection).get("section") == "mains_u"

    def write(self):
        paper = self.paper
        paper.shut_down()
        if GAS in self.kinds and self.chance(0.7):
            paper.test("tightness", at="inlet")
        self.make_mains_safe()
        safe = [self.make_wet_safe] * (HEATING in self.kinds) + [self.make_gas_safe] * (GAS in self.kinds)
        self.rng.shuffle(safe)
        for make_safe in safe:
            make_safe()
        self.strip(self.stripped)
        target = self.stripped[-1]
        self.refit([target])
        back = [self.bring_wet_back] * (HEATING in self.kinds) + [self.bring_gas_back] * (GAS in self.kinds)
        self.rng.shuffle(back)
        for bring_back in back:
            bring_back()
        self.refit(self.stripped[:-1])
        self.bring_mains_back()
        paper.start()
        self.test_hot()
        paper.test("function")

    def make_mains_safe(self):
        self.proved = True
        if MAINS not in self.kinds:
            return
        if self.chance(0.5):
            self.paper.isolate(self.feeds)
        else:
            for feed in self.feeds:
                self.paper.isolate([feed])
        self.paper.lock(self.feeds)
        self.proved = False
        first = self.stripped[0]
        covered = len(self.stripped) > 1 and not any(map(self.is_mains, self.connections_of.get(first, [])))
        if not covered or self.chance(0.4):
            self.prove_mains()

    def prove_mains(self):
        if not self.proved:
            self.paper.prove("mains_u")
            self.proved = True

    def make_wet_safe(self):
        paper = self.paper
        if self.chance(0.6):
            paper.isolate(self.valves)
        else:
            for valve in self.valves:
                paper.isolate([valve])
        if self.drains:
            paper.release("body", "drain", "vent")
        else:
            paper.release("body", "vent")
        paper.prove("body")

    def make_gas_safe(self):
        paper = self.paper
        paper.isolate(self.shut_off)
        if self.gauged:
            paper.undo("tp", stage="make safe")
            paper.place("gauge")
        paper.prove("inlet", at="tp")
        if not self.gauged:
            paper.make("tp", stage="make safe")
        for item in paper.temporary:
            if "bonds" in item:
                paper.place(item["id"])

    def strip(self, parts):
        for part in parts:
            for k in self.shuffled(self.connections_of.get(part, [])):
                count = self.plan(k).get("count", 1)
                if count > 1 and self.chance(0.2):
                    self.paper.slacken(k)
                if count > 2 and self.chance(0.2):
                    self.paper.undo(k, 2)
                    self.paper.undo(k, count - 2)
                else:
                    self.paper.undo(k)
            self.paper.remove(part)
            self.prove_mains()

    def refit(self, parts):
        for part in reversed(parts):
            self.paper.fit(part)
            for k in self.shuffled(self.connections_of.get(part, [])):
                count = self.plan(k).get("count", 1)
                self.paper.make(k, count if count > 1 and self.chance(0.3) else None)
                if "bond" in self.plan(k):
                    self.paper.take_away(f"bond_{k}")

    def shuffled(self, things):
        things = list(things)
        self.rng.shuffle(things)
        return things

    def bring_wet_back(self):
        paper = self.paper
        if self.drains:
            paper.make("drain")
        if self.chance(0.6):
            paper.restore(self.valves)
        else:
            for valve in self.valves:
                paper.restore([valve])
        paper.purge("body", "vent")
        paper.make("vent", stage="recommission")
        paper.test("fill pressure")
        ports = ["vent", "drain"] if self.drains else ["vent"]
        paper.test("leak cold", [*self.wet_joints(), *ports] if self.chance(0.4) else ())

    def wet_joints(self):
        return [k["id"] for k in self.paper.connections if k.get("section") == "body" and "port" not in k]

    def bring_gas_back(self):
        paper = self.paper
        paper.restore(self.shut_off)
        paper.test("tightness", at="tp" if self.gauged else "inlet")
        if self.gauged:
            paper.isolate(["gv"])
            paper.take_away("gauge")
            paper.make("tp", stage="recommission")
            paper.restore(["gv"])
        paper.test("leak fluid")
        paper.purge("gas")

    def bring_mains_back(self):
        if MAINS not in self.kinds:
            return
        terminals = [k for k in self.paper.connections if self.is_mains(k["id"]) and k["family"] == "joint"]
        if terminals and not self.continuity:
            self.paper.test("earth continuity")
            self.continuity = True
        if self.chance(0.5):
            self.paper.restore(self.feeds)
        else:
            for feed in self.feeds:
                self.paper.restore([feed])
        if terminals and not self.polar:
            self.paper.test("polarity")
            self.polar = True

    continuity = False
    polar = False

    def test_hot(self):
        """Hot, by sight: where covers are in the way they come off once more, the mains dead and locked."""
        if HEATING not in self.kinds:
            return
        covers = [p for p in self.stripped[:-1] if self.hides_wet(p)]
        if covers:
            covers = [p for p in self.stripped[:-1] if any(p == c or p in self.front[c] for c in covers)]
            self.paper.shut_down()
            if MAINS in self.kinds:
                self.paper.isolate(self.feeds)
                self.paper.lock(self.feeds)
                self.paper.prove("mains_u")
            self.strip(covers)
        self.paper.test("leak hot", self.wet_joints() if self.chance(0.4) else ())
        if covers:
            self.refit(covers)
            self.bring_mains_back()
            self.paper.start()

    def hides_wet(self, part):
        hidden = [k for k in self.wet_joints() if "reached_after" not in self.plan(k)]
        return bool(hidden) and part in self.front[self.stripped[-1]]


# --- spoiling --------------------------------------------------------------------------------------------


def spoil(rng, steps):
    """Steps with one thing wrong, perhaps, and what was done to them."""
    steps = copy.deepcopy(steps)
    at = rng.randrange(len(steps))
    how = rng.choice(("left out", "left out", "swapped", "moved", "twice", "one forgotten"))
    if how == "left out":
        gone = steps.pop(at)
        return steps, f"without \"{gone['words']}\""
    if how == "swapped":
        at = rng.randrange(len(steps) - 1)
        steps[at], steps[at + 1] = steps[at + 1], steps[at]
        return steps, f"\"{steps[at]['words']}\" one step too early"
    if how == "moved":
        moved = steps.pop(at)
        to = rng.randrange(len(steps) + 1)
        steps.insert(to, moved)
        return steps, f"\"{moved['words']}\" as step {to + 1}"
    if how == "twice":
        to = rng.randrange(at + 1, len(steps) + 1)
        steps.insert(to, copy.deepcopy(steps[at]))
        return steps, f"\"{steps[at]['words']}\" again as step {to + 1}"
    return forget_one(rng, steps)


def forget_one(rng, steps):
    """One of several valves, or one of several screws, is forgotten."""
    chances = [step for step in steps if len(step["actions"][0].get("on", [])) > 1]
    chances += [step for step in steps if step["actions"][0].get("count", 0) > 1]
    if not chances:
        gone = steps.pop(rng.randrange(len(steps)))
        return steps, f"without \"{gone['words']}\""
    step = rng.choice(chances)
    action = step["actions"][0]
    if action.get("count", 0) > 1:
        action["count"] -= 1
    else:
        action["on"].pop(rng.randrange(len(action["on"])))
    return steps, f"one forgotten in \"{step['words']}\""


def procedures(n, seed):
    """`n` procedures, about one in five as it should be."""
    rng = random.Random(seed)
    for number in range(n):
        job = Job(rng, f"random-{number:03}")
        job.write()
        steps, wrong = job.paper.steps, []
        for _ in range(rng.choice((0, 1, 1, 1, 2))):
            steps, what = spoil(rng, steps)
            wrong.append(what)
        job.paper.title = f"Random job {number}: " + ("; ".join(wrong) or "as it should be")
        yield job.paper.procedure(steps)
