"""The appliance map of a procedure file as plain lists, and the ways between its sections.

Knows topology alone: which isolators lie on which way. What is open at a moment is a matter of the planning
problem (see world.py). For safety an automatic isolator and a supply without a handle count as open, a relief
device as shut; so a way is written as the set of isolators that must be open for it.
"""

SUPPLY = "supply"

MAINS = "mains electricity"
HEATING = "heating water"
GAS = "fuel gas"
KINDS = (MAINS, HEATING, GAS)

ALWAYS_OPEN = ("automatic", "none")


class NotTranslated(Exception):
    """The file says something that the judge does not know; it must not guess."""


class Appliance:
    """What the map of one file says."""

    def __init__(self, appliance_map):
        self.kind_of = {}
        self.sections_of_circuit = {}
        for circuit in appliance_map.get("circuits", []):
            if circuit["kind"] not in KINDS:
                raise NotTranslated(f"circuits of the kind {circuit['kind']!r}")
            if circuit.get("fed_by"):
                raise NotTranslated("a circuit fed by another")
            ids = [section["id"] for section in circuit["sections"]]
            self.sections_of_circuit[circuit["id"]] = ids
            for section in circuit["sections"]:
                if section.get("normally_empty"):
                    raise NotTranslated("a section that is empty in service")
                self.kind_of[section["id"]] = circuit["kind"]
        self.circuit_of = {s: c for c, ids in self.sections_of_circuit.items() for s in ids}
        self.isolators = {i["id"]: i for i in appliance_map.get("isolators", [])}
        self.components = {c["id"]: c for c in appliance_map.get("components", [])}
        self.connections = {k["id"]: k for k in appliance_map.get("connections", [])}
        self.temporary = {t["id"]: t for t in appliance_map.get("temporary", [])}
        for component in self.components.values():
            if any(component.get(field) for field in ("carried_by", "held_in", "starts_itself", "moved_by")):
                raise NotTranslated("carried, loose, moving or self-starting parts")
        if appliance_map.get("settings"):
            raise NotTranslated("settings")

    def sections(self, kind=None):
        """Every section, or those of circuits of one kind."""
        return [s for s, k in self.kind_of.items() if kind in (None, k)]

    def sections_named(self, names):
        """Sections for ids of sections or circuits; a circuit stands for all its sections."""
        named = []
        for name in names:
            if name in self.sections_of_circuit:
                named += self.sections_of_circuit[name]
            elif name in self.kind_of:
                named.append(name)
            else:
                raise NotTranslated(f"{name!r}, which is no section")
        return named

    def borders(self, section):
        """Isolators at a section."""
        return [i for i, isolator in self.isolators.items() if section in isolator["between"]]

    def ways(self, start, goal, automatic_open=True):
        """Simple ways from a section to another section or the supply: each a tuple of isolators."""
        found = []

        def walk(here, seen, way):
            if here == goal:
                found.append(tuple(way))
                return
            for i in self.borders(here):
                isolator = self.isolators[i]
                handle = isolator["handle"]
                if handle == "relief" or (handle == "automatic" and not automatic_open):
                    continue
                a, b = isolator["between"]
                there = b if a == here else a
                if there in seen or (there == SUPPLY and goal != SUPPLY):
                    continue
                walk(there, seen | {there}, [*way, i])

        walk(start, {start}, [])
        return found

    def is_automatic(self, isolator):
        return self.isolators[isolator]["handle"] == "automatic"

    def has_fluent(self, isolator):
        """Whether somebody can open and close it."""
        return self.isolators[isolator]["handle"] not in ALWAYS_OPEN

    def behind(self, component):
        """Everything that stands in front of a component, also at one remove."""
        front, left = [], list(self.components[component].get("behind", []))
        while left:
            guard = left.pop()
            if guard not in front:
                front.append(guard)
                left += self.components[guard].get("behind", [])
        return front

    def reach(self, connection):
        """What must be out of the way before a connection can be reached."""
        plan = self.connections[connection]
        if "reached_after" in plan:
            return list(plan["reached_after"])
        return sorted({g for c in plan.get("joins", []) for g in self.behind(c)})

    def at_section(self, section):
        """Connections through which a section's medium or current goes."""
        return [k for k, plan in self.connections.items() if plan.get("section") == section]

    def joining(self, component):
        """Connections of a component."""
        return [k for k, plan in self.connections.items() if component in plan.get("joins", [])]

    def kind_at(self, connection):
        """The kind of circuit that goes through a connection, if any."""
        return self.kind_of.get(self.connections[connection].get("section"))

    def energises(self, component):
        """Mains connections of a component, each with its section."""
        mains = [k for k in self.joining(component) if self.kind_at(k) == MAINS]
        return [(k, self.connections[k]["section"]) for k in mains]

    def bares(self, guard):
        """Mains sections that lie bare when a component is out of the way."""
        behind = [k for k in self.connections if guard in self.reach(k) and self.kind_at(k) == MAINS]
        return sorted({self.connections[k]["section"] for k in behind})

    def is_cover(self, component):
        """A component that only covers: nothing flows through what holds it."""
        return all(self.kind_at(k) is None for k in self.joining(component))
