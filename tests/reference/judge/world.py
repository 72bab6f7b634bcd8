"""The state of a job as fluents of a planning problem, and the words of the semantics as formulas over them.

Every derived word (fed, locked, in force …) is grounded over the ways of the map, so that the planning library
evaluates it and nothing of ours does. Heating water stores pressure and heat, gas and mains store nothing.
"""

from unified_planning.shortcuts import FALSE, TRUE, And, BoolType, Equals, Fluent, GT, IntType, Not, Or, Problem

from appliance import GAS, HEATING, MAINS, SUPPLY

FAMILY = {MAINS: "isolation", HEATING: "pressure", GAS: "gas"}


def every(formulas):
    return And([TRUE(), *formulas])


def some(formulas):
    return Or([FALSE(), *formulas])


class World:
    """Fluents of one appliance."""

    def __init__(self, appliance):
        self.map = appliance
        self.problem = Problem("job")
        self._fluents = {}
        self.running = self._bool("running", True)
        self.function_due = self._bool("function due", False)
        for i, isolator in appliance.isolators.items():
            if appliance.has_fluent(i):
                normally = isolator.get("normal", "open") == "open" and isolator["handle"] != "relief"
                self._bool(f"open {i}", normally)
                self._bool(f"locked {i}", False)
        for s, kind in appliance.kind_of.items():
            self._bool(f"proved {s}", False)
            self._bool(f"lapsed {s}", False)
            self._bool(f"pressure {s}", kind == HEATING)
            self._bool(f"heat {s}", kind == HEATING)
            self._bool(f"air {s}", False)
            self._bool(f"mixed {s}", False)
            self._bool(f"due fill pressure {s}", False)
        for k, connection in appliance.connections.items():
            self._int(f"made {k}", connection.get("count", 1))
            self._int(f"slack {k}", 0)
            self._int(f"apart {k}", 0)
            for kind in self.tests_after(k):
                self._bool(f"due {kind} {k}", False)
        for c in appliance.components:
            self._bool(f"fitted {c}", True)
        for t, item in appliance.temporary.items():
            self._bool(f"placed {t}", item.get("initially", False))

    def _bool(self, name, value):
        fluent = Fluent(name, BoolType())
        self.problem.add_fluent(fluent, default_initial_value=value)
        self._fluents[name] = fluent()
        return fluent()

    def _int(self, name, value):
        fluent = Fluent(name, IntType())
        self.problem.add_fluent(fluent, default_initial_value=value)
        self._fluents[name] = fluent()

    def of(self, *words):
        """A fluent by its name: of("made", k)."""
        return self._fluents[" ".join(words)]

    def tests_after(self, connection):
        """Kinds of tests that a connection needs after it was touched; "leak" is cold or hot."""
        kind, plan = self.map.kind_at(connection), self.map.connections[connection]
        if kind == HEATING:
            return ["leak"] if "port" in plan else ["leak cold", "leak hot"]
        if kind == GAS:
            return ["leak fluid"] if "port" in plan or self.behind_automatic(plan["section"]) else [
                "tightness",
                "leak fluid",
            ]
        if kind == MAINS and plan["family"] == "joint":
            return ["earth continuity", "polarity"]
        return []

    def behind_automatic(self, section):
        """Whether gas comes to a section only through an automatic valve: the burner side."""
        return not self.map.ways(section, SUPPLY, automatic_open=False)

    # --- isolators and supplies --------------------------------------------------------------------------

    def is_open(self, isolator, opened=(), automatic=None):
        """An isolator lets through; `opened` are taken as open, `automatic` replaces "counts as open"."""
        if isolator in opened:
            return TRUE()
        if self.map.is_automatic(isolator):
            return TRUE() if automatic is None else automatic
        return self.of("open", isolator) if self.map.has_fluent(isolator) else TRUE()

    def joined(self, start, goal, opened=(), automatic=None):
        """Two sections, or a section and the supply, are joined by open isolators."""
        if start == goal:
            return TRUE()
        ways = self.map.ways(start, goal)
        return some(every(self.is_open(i, opened, automatic) for i in way) for way in ways)

    def fed(self, section, opened=(), automatic=None):
        return self.joined(section, SUPPLY, opened, automatic)

    def pressed(self, section, opened=()):
        """The group of the section holds pressure, or a supply of a medium that presses reaches it."""
        if self.map.kind_of[section] != HEATING:
            return FALSE()
        others = self.map.sections(HEATING)
        stored = [And(self.of("pressure", o), self.joined(section, o, opened)) for o in others]
        return Or(self.fed(section, opened), some(stored))

    def still_fed(self, section, named=()):
        """A supply, or a neighbour under pressure that is not named and not merely behind an automatic."""
        found = [self.fed(section)]
        for other in self.map.sections_of_circuit[self.map.circuit_of[section]]:
            if other == section or other in named:
                continue
            ways = [w for w in self.map.ways(section, other) if not all(map(self.map.is_automatic, w))]
            reached = some(every(self.is_open(i) for i in way) for way in ways)
            found.append(And(self.of("pressure", other), reached))
        return some(found)

    def locked(self, section):
        """Every closed isolator that borders the group of the section is locked."""
        circuit = self.map.sections_of_circuit[self.map.circuit_of[section]]
        return every(
            Or(Not(self.joined(section, other)), self.of("open", i), self.of("locked", i))
            for other in circuit
            for i in self.map.borders(other)
            if self.map.has_fluent(i)
        )

    def in_force(self, section):
        """The ladder of a section, as reasons in their order, each with what must hold."""
        family = FAMILY[self.map.kind_of[section]]
        rungs = [(f"{family}/still-fed", Not(self.still_fed(section)))]
        if family == "isolation":
            rungs.append((f"{family}/not-locked", self.locked(section)))
        rungs.append((f"{family}/not-released", Not(self.of("pressure", section))))
        proved, lapsed = self.of("proved", section), self.of("lapsed", section)
        rungs += [(f"{family}/not-proved", Or(proved, lapsed)), (f"{family}/proof-lapsed", proved)]
        return rungs

    # --- connections and parts ---------------------------------------------------------------------------

    def is_made(self, connection):
        return Equals(self.of("made", connection), self.map.connections[connection].get("count", 1))

    def is_apart(self, connection):
        """Every fastener is off; slots and keyholes let go when they are slack."""
        if self.map.connections[connection].get("frees_when") == "slack":
            return Equals(self.of("made", connection), 0)
        return Equals(self.of("apart", connection), self.map.connections[connection].get("count", 1))

    def something_apart(self, connection):
        return GT(self.of("apart", connection), 0)

    def lacks(self, kind, connection):
        """A test is due on a connection. One that is open is reported as open: its tests can only follow."""
        return And(self.is_made(connection), self.of("due", kind, connection))

    def closed_by_item(self, connection, but_gauges=False):
        items = self.map.temporary.items()
        closing = [t for t, item in items if item.get("closes") and item.get("on") == connection]
        closing = [t for t in closing if not (but_gauges and self.map.temporary[t].get("gauge"))]
        return some(self.of("placed", t) for t in closing)

    def is_shut(self, section, vents=True, but=None):
        """Every connection of a section is made or closed; vents may be open if `vents`."""
        shut = []
        for k in self.map.at_section(section):
            port = self.map.connections[k].get("port")
            free = vents and port in ("vent", "outlet") and self.map.kind_of[section] == HEATING
            if not free and k != but:
                shut.append(Or(self.is_made(k), self.closed_by_item(k)))
        return every(shut)

    def out_of_the_way(self, components):
        return every(Not(self.of("fitted", c)) for c in components)

    def guard_on(self, guard):
        fixings = [k for k in self.map.joining(guard) if self.map.connections[k]["family"] == "fixing"]
        return every([self.of("fitted", guard), *(self.is_made(k) for k in fixings)])
