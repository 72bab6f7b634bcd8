"""What each action demands and does, written from the semantics for mains, heating water and fuel gas.

A demand is a chain of (code, formula): the first formula that is not met gives the reason. The codes are the
names that the semantics give to the reasons. Warnings, ageing, questions and settings are left out.
"""

from dataclasses import dataclass, field

from unified_planning.shortcuts import GE, TRUE, And, Equals, GT, Iff, Implies, LT, Minus, Not, Or, Plus

from appliance import GAS, HEATING, MAINS, NotTranslated
from world import FAMILY, every, some

# Tests that are due before the supply comes back or before the appliance starts, with their reasons.
DUE_BEFORE_START = {
    "earth continuity": "retest/order",
    "leak cold": "retest/order",
    "tightness": "gas/fired-before-tested",
}

QUIET = ("tell", "photograph", "read", "hold")


@dataclass
class Planned:
    """One planning action: a file action, or its part for one of several things."""

    demands: list = field(default_factory=list)
    effects: list = field(default_factory=list)

    def demand(self, code, formula):
        self.demands.append([(code, formula)])

    def in_turn(self):
        """Makes one chain of all demands: of those that are not met only the first is a reason."""
        self.demands = [[link for chain in self.demands for link in chain]]
        return self

    def effect(self, fluent, value, condition=None):
        self.effects.append((fluent, value, TRUE() if condition is None else condition))


class Actions:
    """Turns file actions into planning actions over one world."""

    def __init__(self, world):
        self.world = world
        self.map = world.map

    def planned(self, action):
        """The planning actions of one file action, in order."""
        verb = action["do"]
        if verb in QUIET:
            return []
        if action.get("unattended") or action.get("live") or action.get("one_of"):
            raise NotTranslated(f"{verb!r} unattended, live or one of several")
        whole = {
            "shut down": self.shut_down,
            "start": self.start,
            "restore": self.restore,
            "release": self.release,
            "prove": self.prove,
            "charge": self.charge,
            "purge": self.purge,
            "test": self.test,
            "wait": lambda _: Planned(),
        }
        if verb in whole:
            return [whole[verb](action)]
        one_by_one = {
            "isolate": self.isolate,
            "lock": self.lock,
            "slacken": self.slacken,
            "undo": self.undo,
            "make": self.make,
            "remove": self.remove,
            "fit": self.fit,
            "place": self.place,
            "take away": self.take_away,
        }
        if verb not in one_by_one:
            raise NotTranslated(f"the verb {verb!r}")
        return [one_by_one[verb](thing, action) for thing in action["on"]]

    # --- appliance and isolators -------------------------------------------------------------------------

    def shut_down(self, _action):
        planned = Planned()
        planned.effect(self.world.running, False)
        return planned

    def isolate(self, isolator, _action):
        planned = Planned()
        planned.demand("isolation/no-handle", TRUE() if self.map.has_fluent(isolator) else Not(TRUE()))
        if self.map.has_fluent(isolator):
            planned.effect(self.world.of("open", isolator), False)
        return planned

    def lock(self, isolator, _action):
        planned = Planned()
        planned.demand("isolation/locked-open", Not(self.world.of("open", isolator)))
        planned.effect(self.world.of("locked", isolator), True)
        return planned

    def restore(self, action):
        world, opened, planned = self.world, action["on"], Planned()
        for i in opened:
            planned.demand("isolation/already-open", Not(world.of("open", i)))
            planned.effect(world.of("open", i), True)
            planned.effect(world.of("locked", i), False)
        for s in self.map.sections():
            ends = [side for i in opened for side in self.map.isolators[i]["between"]]
            joined = some(world.joined(s, end, opened) for end in ends if end in self.map.kind_of)
            if self.map.kind_of[s] == HEATING:
                comes_on = And(joined, world.pressed(s, opened), Not(world.pressed(s)))
            else:
                comes_on = And(joined, world.fed(s, opened), Not(world.fed(s)))
            self.comes_on(planned, s, comes_on)
            self.lapse(planned, s, joined)
            if self.map.kind_of[s] == HEATING:
                planned.effect(world.of("pressure", s), True, And(joined, world.pressed(s, opened)))
            came_in = And(joined, Or(world.fed(s, opened), world.pressed(s, opened)), world.of("air", s))
            planned.effect(world.of("air", s), False, came_in)
            planned.effect(world.of("mixed", s), True, came_in)
        planned.effect(world.function_due, True)
        return planned

    def comes_on(self, planned, section, comes_on):
        """What must be so before a section becomes fed or joined to pressure."""
        world, kind = self.world, self.map.kind_of[section]
        planned.demand(f"{FAMILY[kind]}/restored-open", Implies(comes_on, world.is_shut(section)))
        if kind != MAINS:
            return
        for k in self.map.at_section(section):
            if "earth continuity" in world.tests_after(k):
                planned.demand("retest/order", Implies(comes_on, Not(world.lacks("earth continuity", k))))
        for guard in self.map.components:
            if section in self.map.bares(guard):
                planned.demand("isolation/restored-guard-off", Implies(comes_on, world.guard_on(guard)))

    def start(self, _action):
        world, planned = self.world, Planned()
        for s, kind in self.map.kind_of.items():
            if kind == MAINS:
                planned.demand("isolation/started-dead", world.fed(s))
            else:
                code = "gas/not-purged" if kind == GAS else "pressure/not-bled"
                planned.demand(code, And(Not(world.of("air", s)), Not(world.of("mixed", s))))
            loaded = Or(world.fed(s), world.pressed(s))
            planned.demand(f"{FAMILY[kind]}/restored-open", Implies(loaded, world.is_shut(s)))
            self.lapse(planned, s, loaded)
            if kind == HEATING:
                planned.effect(world.of("pressure", s), True, loaded)
                planned.effect(world.of("heat", s), True, loaded)
        for k in self.map.connections:
            for kind in world.tests_after(k):
                if kind in DUE_BEFORE_START:
                    planned.demand(DUE_BEFORE_START[kind], Not(world.lacks(kind, k)))
        planned.effect(world.running, True)
        return planned

    def lapse(self, planned, section, condition):
        """A proof that held holds no longer."""
        planned.effect(self.world.of("lapsed", section), True, And(condition, self.world.of("proved", section)))
        planned.effect(self.world.of("proved", section), False, condition)

    # --- sections ----------------------------------------------------------------------------------------

    def release(self, action):
        world, planned = self.world, Planned()
        named = self.map.sections_named(action["on"])
        if action.get("what", "pressure") != "pressure" or action.get("by") not in ("drain", "vent"):
            raise NotTranslated("a release that neither drains nor vents")
        drains = action["by"] == "drain"
        planned.demand("isolation/not-shut-down", Not(world.running))
        if drains and not action.get("to"):
            planned.demand("pressure/nowhere-to-go", Not(TRUE()))
        for s in named:
            planned.demand(f"{FAMILY[self.map.kind_of[s]]}/still-fed", Not(world.still_fed(s, named)))
            if drains:
                self.not_energised(planned, s)
                planned.effect(world.of("air", s), True)
                planned.effect(world.of("mixed", s), False)
            planned.effect(world.of("pressure", s), False)
            planned.effect(world.of("due", "fill pressure", s), self.map.kind_of[s] == HEATING)
        for port in dict.fromkeys(filter(None, (action.get("through"), action.get("vent")))):
            self.open_port(planned, port)
        return planned

    def not_energised(self, planned, section):
        """No part joined to a section that is drained is energised."""
        for k in self.map.at_section(section):
            for c in self.map.connections[k].get("joins", []):
                for plug, mains in self.map.energises(c):
                    dead = Or(self.is_off(plug), Not(self.world.fed(mains)))
                    planned.demand("isolation/drained-live", dead)

    def is_off(self, connection):
        count = self.map.connections[connection].get("count", 1)
        return Equals(self.world.of("apart", connection), count)

    def open_port(self, planned, port):
        """A port that is named by a release, a proof or a purge opens."""
        if "port" not in self.map.connections[port]:
            raise NotTranslated("a joint cracked to release")
        planned.effect(self.world.of("apart", port), self.map.connections[port].get("count", 1))
        planned.effect(self.world.of("made", port), 0)
        planned.effect(self.world.of("slack", port), 0)
        self.touched(planned, port)

    def touched(self, planned, connection):
        for kind in self.world.tests_after(connection):
            planned.effect(self.world.of("due", kind, connection), True)
        if self.map.kind_at(connection) == MAINS:
            planned.effect(self.world.function_due, True)

    def prove(self, action):
        world, planned = self.world, Planned()
        named = self.map.sections_named(action["on"])
        for s in named:
            # The last rungs are what this action brings about.
            planned.demands.append(world.in_force(s)[:-2])
            if action.get("readings"):
                raise NotTranslated("a proof with readings of its own")
        shown = list(named)
        for s in self.map.sections():
            ways = [way for n in named for way in self.map.ways(n, s)]
            if s not in shown and any(all(map(self.map.is_automatic, way)) for way in ways):
                shown.append(s)
        for s in shown:
            planned.effect(world.of("proved", s), True)
            planned.effect(world.of("lapsed", s), False)
            planned.effect(world.of("heat", s), False)
        at = action.get("at")
        if at and "port" in self.map.connections.get(at, {}):
            self.open_port(planned, at)
        return planned

    def charge(self, action):
        world, planned = self.world, Planned()
        named = self.map.sections_named(action["on"])
        for s in self.map.sections(HEATING):
            joined = some(world.joined(s, n) for n in named)
            planned.demand("pressure/restored-open", Implies(joined, world.is_shut(s)))
            planned.effect(world.of("pressure", s), True, joined)
            self.lapse(planned, s, joined)
            planned.effect(world.of("due", "fill pressure", s), True, joined)
            was_air = And(joined, world.of("air", s))
            planned.effect(world.of("air", s), False, was_air)
            planned.effect(world.of("mixed", s), True, was_air)
        if action.get("through"):
            self.open_port(planned, action["through"])
        return planned

    def purge(self, action):
        world, planned = self.world, Planned()
        named = self.map.sections_named(action["on"])
        for s in named:
            if self.map.kind_of[s] == GAS:
                planned.demand("gas/purge-dead", world.fed(s))
                for k in self.map.at_section(s):
                    if "tightness" in world.tests_after(k):
                        planned.demand("gas/purged-before-tested", Not(world.lacks("tightness", k)))
            else:
                planned.demand("pressure/not-filled", Not(world.of("air", s)))
        for s in self.map.sections():
            if self.map.kind_of[s] != self.map.kind_of[named[0]]:
                continue
            joined = TRUE() if s in named else some(world.joined(s, n) for n in named)
            planned.effect(world.of("mixed", s), False, joined)
            self.lapse(planned, s, joined)
            if self.map.kind_of[s] == HEATING:
                planned.effect(world.of("due", "fill pressure", s), True, joined)
        if action.get("through"):
            self.open_port(planned, action["through"])
        return planned

    # --- connections -------------------------------------------------------------------------------------

    def hands(self, planned, components):
        """Nothing that electrifies these parts, and is not what they guard, is short of its ladder."""
        for c in components:
            for plug, section in self.map.energises(c):
                if section not in self.map.bares(c):
                    off = self.is_off(plug)
                    chain = [(code, Or(off, met)) for code, met in self.world.in_force(section)]
                    planned.demands.append(chain)

    def touch(self, planned, connection):
        """The demands of touching a connection that is no port."""
        plan = self.map.connections[connection]
        if plan.get("section"):
            planned.demands.append(self.world.in_force(plan["section"]))
        if self.map.kind_at(connection) != MAINS:
            self.hands(planned, plan.get("joins", []))
        for guard in self.map.reach(connection):
            for section in self.map.bares(guard):
                fitted = self.world.of("fitted", guard)
                chain = [(code, Or(fitted, met)) for code, met in self.world.in_force(section)]
                planned.demands.append(chain)

    def may_open(self, planned, connection):
        world, plan = self.world, self.map.connections[connection]
        planned.demand("putback/out-of-reach", world.out_of_the_way(self.map.reach(connection)))
        if "port" not in plan:
            self.touch(planned, connection)
        elif plan["port"] in ("drain", "vent", "test"):
            family = FAMILY[self.map.kind_at(connection)]
            planned.demand(f"{family}/still-fed", Not(world.still_fed(plan["section"])))
            if plan["port"] != "test":
                planned.demand("isolation/not-shut-down", Not(world.running))
        elif plan["port"] != "outlet":
            raise NotTranslated(f"a port of the kind {plan['port']!r}")

    def slacken(self, connection, action):
        world, planned = self.world, Planned()
        made, slack = world.of("made", connection), world.of("slack", connection)
        n = action.get("count", made)
        planned.demand("putback/undone-twice", And(GT(made, 0), GE(made, n)))
        self.may_open(planned, connection)
        planned.effect(made, Minus(made, n))
        planned.effect(slack, Plus(slack, n))
        self.touched(planned, connection)
        return planned

    def undo(self, connection, action):
        world, planned = self.world, Planned()
        made, slack, apart = (world.of(state, connection) for state in ("made", "slack", "apart"))
        n = action.get("count", Plus(made, slack))
        planned.demand("putback/undone-twice", And(GT(Plus(made, slack), 0), GE(Plus(made, slack), n)))
        self.may_open(planned, connection)
        plan = self.map.connections[connection]
        if plan.get("bond"):
            bonds = [t for t, item in self.map.temporary.items() if item.get("bonds") == connection]
            planned.demand("gas/no-bond", some(world.of("placed", t) for t in bonds))
        # Slack fasteners come off first.
        enough = GE(slack, n)
        planned.effect(slack, Minus(slack, n), enough)
        planned.effect(slack, 0, Not(enough))
        planned.effect(made, Minus(made, Minus(n, slack)), Not(enough))
        planned.effect(apart, Plus(apart, n))
        self.touched(planned, connection)
        kind = self.map.kind_at(connection)
        if kind in (HEATING, GAS) and "port" not in plan:
            planned.effect(world.of("air", plan["section"]), kind == HEATING)
            planned.effect(world.of("mixed", plan["section"]), kind == GAS)
        return planned

    def make(self, connection, action):
        world, planned = self.world, Planned()
        made, slack, apart = (world.of(state, connection) for state in ("made", "slack", "apart"))
        if action.get("to"):
            raise NotTranslated("made finger-tight")
        n = action.get("count", Plus(apart, slack))
        planned.demands.append(
            [
                ("putback/made-not-opened", GT(Plus(apart, slack), 0)),
                ("putback/counts", GE(Plus(apart, slack), n)),
            ]
        )
        planned.demand("putback/out-of-reach", world.out_of_the_way(self.map.reach(connection)))
        # A gauge may be put on a closed port, so it is no blank inside one that is closed under it.
        gauges = "port" in self.map.connections[connection]
        planned.demand("putback/blank-inside", Not(world.closed_by_item(connection, but_gauges=gauges)))
        plan = self.map.connections[connection]
        parts = plan.get("joins", [])
        if parts and not plan.get("flexible", plan["family"] == "connector"):
            on = [world.of("fitted", c) for c in parts]
            together = len(parts) > 1 and every(Iff(on[0], one) for one in on[1:])
            planned.demand("putback/made-to-nothing", together or on[0])
        if "port" not in plan:
            self.touch(planned, connection)
        enough = GE(apart, n)
        planned.effect(apart, Minus(apart, n), enough)
        planned.effect(apart, 0, Not(enough))
        planned.effect(slack, Minus(slack, Minus(n, apart)), Not(enough))
        planned.effect(made, Plus(made, n))
        self.touched(planned, connection)
        return planned

    # --- parts and temporary items -----------------------------------------------------------------------

    def remove(self, component, _action):
        world, planned = self.world, Planned()
        planned.demand("putback/removed-twice", world.of("fitted", component))
        planned.demand("putback/out-of-reach", world.out_of_the_way(self.map.behind(component)))
        for k in self.map.joining(component):
            planned.demand("putback/still-held", world.is_apart(k))
        self.hands(planned, [component])
        for section in self.map.bares(component):
            planned.demands.append(
                [
                    ("isolation/guard-off-live", Not(world.still_fed(section))),
                    ("isolation/not-locked", world.locked(section)),
                ]
            )
        planned.effect(world.of("fitted", component), False)
        return planned

    def fit(self, component, _action):
        world, planned = self.world, Planned()
        planned.demand("putback/fit-not-removed", Not(world.of("fitted", component)))
        planned.demand("putback/out-of-reach", world.out_of_the_way(self.map.behind(component)))
        for k in self.map.joining(component):
            if not self.map.connections[k].get("flexible", self.map.connections[k]["family"] == "connector"):
                planned.demand("putback/blank-inside", Not(world.closed_by_item(k)))
        for other in self.map.components:
            if component in self.map.behind(other):
                planned.demand("putback/covers-unfinished", world.of("fitted", other))
        for k in self.map.connections:
            if component in self.map.reach(k):
                planned.demand("putback/covers-unfinished", world.is_made(k))
        planned.effect(world.of("fitted", component), True)
        if not self.map.is_cover(component):
            planned.effect(world.function_due, True)
        return planned

    def place(self, item, _action):
        world, planned, plan = self.world, Planned(), self.map.temporary[item]
        planned.demand("putback/placed-twice", Not(world.of("placed", item)))
        on = plan.get("on")
        if plan.get("closes") and on and not (plan.get("gauge") and "port" in self.map.connections[on]):
            planned.demand("putback/blank-inside", world.something_apart(on))
        planned.effect(world.of("placed", item), True)
        return planned

    def take_away(self, item, _action):
        world, planned, plan = self.world, Planned(), self.map.temporary[item]
        planned.demand("putback/taken-not-placed", world.of("placed", item))
        on = plan.get("on")
        if plan.get("closes") and on:
            section = self.map.connections[on]["section"]
            made = world.is_made(on)
            rungs = world.in_force(section)
            rungs = rungs[:1] if "port" in self.map.connections[on] else rungs
            planned.demands.append([(code, Or(made, met)) for code, met in rungs])
        if plan.get("bonds"):
            planned.demand("gas/no-bond", world.is_made(plan["bonds"]))
        planned.effect(world.of("placed", item), False)
        return planned

    # --- tests -------------------------------------------------------------------------------------------

    def test(self, action):
        kind = action["test"]
        by_kind = {
            "function": self.test_function,
            "earth continuity": self.test_mains,
            "polarity": self.test_mains,
            "fill pressure": self.test_wet,
            "leak cold": self.test_wet,
            "leak hot": self.test_wet,
            "tightness": self.test_tightness,
            "leak fluid": self.test_leak_fluid,
        }
        if kind not in by_kind:
            raise NotTranslated(f"the test {kind!r}")
        return by_kind[kind](action).in_turn()

    def test_function(self, _action):
        planned = Planned()
        planned.demand("reading/wrong-state", self.world.running)
        planned.effect(self.world.function_due, False)
        return planned

    def test_mains(self, action):
        world, planned, kind = self.world, Planned(), action["test"]
        sections = self.map.sections(MAINS)
        loaded = {s: world.fed(s) if kind == "polarity" else Not(world.fed(s)) for s in sections}
        self.stamps(planned, action, [kind], loaded, by_sight=False)
        return planned

    def test_wet(self, action):
        world, planned, kind = self.world, Planned(), action["test"]
        loaded = {s: world.of("pressure", s) for s in self.map.sections(HEATING)}
        if kind == "leak hot":
            loaded = {s: And(under, world.of("heat", s)) for s, under in loaded.items()}
        if kind == "fill pressure":
            if action.get("on"):
                raise NotTranslated("a fill pressure that names what it covers")
            planned.demand("reading/wrong-state", some(loaded.values()))
            for s, when in loaded.items():
                planned.effect(world.of("due", "fill pressure", s), False, when)
        else:
            self.stamps(planned, action, [kind, "leak"], loaded, by_sight=True)
        for s, when in loaded.items():
            # Vents may be open at filling; a test under pressure wants them shut.
            planned.demand("retest/not-closed", Implies(when, world.is_shut(s, vents=False)))
        return planned

    def test_tightness(self, action):
        world, planned, at = self.world, Planned(), action["at"]
        start = self.map.connections[at]["section"] if at in self.map.connections else at
        planned.demand("reading/wrong-state", Not(world.running))
        shut = Not(TRUE())
        planned.demand("reading/wrong-state", world.fed(start, automatic=shut))
        loaded = {s: world.joined(start, s, automatic=shut) for s in self.map.sections(GAS)}
        self.stamps(planned, action, ["tightness"], loaded, by_sight=False)
        for s, when in loaded.items():
            planned.demand("retest/not-closed", Implies(when, world.is_shut(s, but=at)))
        return planned

    def test_leak_fluid(self, action):
        world, planned = self.world, Planned()
        sections = self.map.sections(GAS)
        loaded = {s: world.fed(s, automatic=world.running) for s in sections}
        self.stamps(planned, action, ["leak fluid"], loaded, by_sight=True)
        return planned

    def stamps(self, planned, action, kinds, loaded, by_sight):
        """A test stamps what it loads, what can be seen, and what is whole; it may not claim more."""
        world, named = self.world, action.get("on", [])
        planned.demand("reading/wrong-state", some(loaded.values()))
        for k in named:
            if k not in self.map.connections:
                raise NotTranslated("a test that covers more than connections")
            section = self.map.connections[k].get("section")
            planned.demand("retest/does-not-load", loaded.get(section, Not(TRUE())))
            if by_sight:
                planned.demand("retest/not-visible", world.out_of_the_way(self.map.reach(k)))
        for k, plan in self.map.connections.items():
            if plan.get("section") not in loaded or (named and k not in named) or k == action.get("at"):
                continue
            seen = world.out_of_the_way(self.map.reach(k)) if by_sight else TRUE()
            whole = And(loaded[plan["section"]], seen, world.is_made(k), Not(world.closed_by_item(k)))
            for kind in kinds:
                if kind in world.tests_after(k):
                    planned.effect(world.of("due", kind, k), False, whole)

    # --- the end of a job in service ---------------------------------------------------------------------

    def end(self):
        """What the end demands, as (code, formula)."""
        world, goals = self.world, []
        for k, plan in self.map.connections.items():
            goals.append(("putback/left-slack", Equals(world.of("slack", k), 0)))
            goals.append(("putback/left-open", Equals(world.of("apart", k), 0)))
            goals += [("retest/missing", Not(world.lacks(kind, k))) for kind in world.tests_after(k)]
        for s in self.map.sections(HEATING):
            goals.append(("retest/missing", Not(world.of("due", "fill pressure", s))))
        for c in self.map.components:
            goals.append(("putback/left-off", world.of("fitted", c)))
        for t, item in self.map.temporary.items():
            if not item.get("stays"):
                at_start = item.get("initially", False)
                placed = world.of("placed", t)
                code = "putback/temp-gone" if at_start else "putback/temp-left"
                goals.append((code, placed if at_start else Not(placed)))
        for i, isolator in self.map.isolators.items():
            if self.map.has_fluent(i):
                normally = isolator.get("normal", "open") == "open"
                is_open = world.of("open", i)
                goals.append(("putback/supply-off", is_open) if normally else ("putback/left-on", Not(is_open)))
        goals.append(("retest/missing", Not(world.function_due)))
        return goals
