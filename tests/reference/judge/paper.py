"""Writes procedure files: things of a map, and steps whose words say their action.

One step carries one action, and its span is the whole sentence. Everything is invented.
"""

import json

from appliance import KINDS, MAINS

ALL_KINDS = (
    *KINDS,
    "control electricity",
    "domestic water",
    "condensate",
    "combustion air and flue",
    "stored heat",
    "refrigerant",
    "compressed air",
    "steam",
    "oil",
    "stored mechanical energy",
    "heat network primary",
    "d.c. bus",
)

NOTE = (
    "Invented for tests. Work on such circuits is for competent people; local codes and the maker's "
    "instructions come first."
)

ONCE_MORE = {"again": "Take it once more with another instrument", "leave_safe": True}


class Paper:
    """One procedure in writing."""

    def __init__(self, name, title):
        self.name = name
        self.title = title
        self.circuits, self.isolators, self.components = [], [], []
        self.connections, self.seals, self.temporary = [], [], []
        self.steps = []
        self.names = {}

    # --- the map -----------------------------------------------------------------------------------------

    def circuit(self, circuit, kind, sections):
        named = [{"id": s, "name": self._named(s, name)} for s, name in sections]
        plan = {"id": circuit, "name": self._named(circuit, circuit), "kind": kind, "sections": named}
        self.circuits.append(plan)

    def isolator(self, isolator, name, between, handle):
        plan = {"id": isolator, "name": self._named(isolator, name), "between": list(between), "handle": handle}
        if handle == "switch":
            plan["lockable"] = True
        self.isolators.append(plan)

    def component(self, component, name, behind=()):
        plan = {"id": component, "name": self._named(component, name)}
        if behind:
            plan["behind"] = list(behind)
        self.components.append(plan)

    def connection(self, connection, name, family, joins=(), section=None, count=1, sealed=False, **more):
        plan = {"id": connection, "name": self._named(connection, name), "family": family}
        if joins:
            plan["joins"] = list(joins)
        if section:
            plan["section"] = section
        if count != 1:
            plan["count"] = count
        if sealed:
            seal = f"seal_{connection}"
            self.seals.append({"id": seal, "name": "washer", "size": "1/2", "policy": "always renew"})
            plan["seals"] = [{"seal": seal}]
            plan["tight"] = {"method": "hand tight and a quarter turn"}
        plan.update(more)
        self.connections.append(plan)

    def item(self, item, name, **more):
        self.temporary.append({"id": item, "name": self._named(item, name), **more})

    def _named(self, thing, name):
        self.names[thing] = name
        return name

    # --- the steps ---------------------------------------------------------------------------------------

    def step(self, stage, words, action):
        action["says"] = [[0, len(words)]]
        self.steps.append({"stage": stage, "words": words, "actions": [action]})

    def the(self, things):
        return " and ".join(f"the {self.names[t]}" for t in things)

    def shut_down(self):
        self.step("make safe", "Shut down the appliance.", {"do": "shut down"})

    def isolate(self, isolators):
        words = "Switch off at" if self._is_switch(isolators[0]) else "Close"
        self.step("make safe", f"{words} {self.the(isolators)}.", {"do": "isolate", "on": list(isolators)})

    def lock(self, isolators):
        self.step("make safe", f"Lock off {self.the(isolators)}.", {"do": "lock", "on": list(isolators)})

    def restore(self, isolators):
        words = "Switch on at" if self._is_switch(isolators[0]) else "Open"
        self.step("recommission", f"{words} {self.the(isolators)}.", {"do": "restore", "on": list(isolators)})

    def _is_switch(self, isolator):
        return any(i["id"] == isolator and i["handle"] == "switch" for i in self.isolators)

    def release(self, section, through, vent=None):
        action = {"do": "release", "on": [section], "what": "pressure", "by": "drain" if vent else "vent"}
        action["through"] = through
        if vent:
            action |= {"vent": vent, "to": "the bucket"}
            words = f"Drain the {self.names[section]} through {self.the([through])} into the bucket"
            words += f" with {self.the([vent])} open."
        else:
            words = f"Let the pressure of the {self.names[section]} out through {self.the([through])}."
        self.step("make safe", words, action)

    def prove(self, section, at=None):
        kinds = {s["id"]: c["kind"] for c in self.circuits for s in c["sections"]}
        action = {"do": "prove", "on": [section]}
        words = f"Prove the {self.names[section]} {'dead' if kinds[section] == MAINS else 'at zero'}"
        if at:
            action["at"] = at
            words += f" at {self.the([at])}"
        self.step("make safe", f"{words}.", action)

    def undo(self, connection, count=None, stage="strip"):
        action = {"do": "undo", "on": [connection]}
        words = f"Undo the {self.names[connection]}."
        if count:
            action["count"] = count
            words = f"Undo {count} of the {self.names[connection]}."
        self.step(stage, words, action)

    def slacken(self, connection):
        words = f"Slacken the {self.names[connection]}."
        self.step("strip", words, {"do": "slacken", "on": [connection]})

    def make(self, connection, count=None, stage="refit"):
        plan = next(k for k in self.connections if k["id"] == connection)
        action = {"do": "make", "on": [connection]}
        words = f"Make the {self.names[connection]}"
        if count:
            action["count"] = count
            words = f"Make {count} of the {self.names[connection]}"
        if plan.get("seals"):
            action["seal"] = "new"
            words += " with a new washer"
        self.step(stage, f"{words}.", action)

    def remove(self, component, stage="strip"):
        self.step(stage, f"Take off the {self.names[component]}.", {"do": "remove", "on": [component]})

    def fit(self, component, stage="refit"):
        action = {"do": "fit", "on": [component], "part": "same"}
        self.step(stage, f"Fit the {self.names[component]}.", action)

    def place(self, item):
        self.step("make safe", f"Put the {self.names[item]} on.", {"do": "place", "on": [item]})

    def take_away(self, item):
        self.step("recommission", f"Take the {self.names[item]} away.", {"do": "take away", "on": [item]})

    def charge(self, section):
        words = f"Fill the {self.names[section]} to 1.2 bar to 1.5 bar."
        limits = {"min": "1.2", "max": "1.5", "unit": "bar"}
        reading = {"what": "gauge", "limits": limits, "source": "invented"}
        self.step("recommission", words, {"do": "charge", "on": [section], "readings": [reading]})

    def purge(self, circuit, through=None):
        action = {"do": "purge", "on": [circuit]}
        words = f"Purge the {self.names[circuit]}"
        if through:
            action["through"] = through
            words = f"Bleed the {self.names[circuit]} through {self.the([through])}"
        self.step("recommission", f"{words}.", action)

    def start(self):
        self.step("recommission", "Start the appliance.", {"do": "start", "mode": "max"})

    def test(self, kind, on=(), at=None):
        action = {"do": "test", "test": kind, "on_fail": dict(ONCE_MORE)}
        words = {
            "leak cold": "Test for leaks cold",
            "leak hot": "Test for leaks hot",
            "leak fluid": "Test with leak detection fluid",
            "tightness": "Test the gas for tightness",
            "fill pressure": "Test the fill pressure",
            "earth continuity": "Test the earth continuity",
            "polarity": "Test the polarity",
            "function": "Test that the appliance works",
        }[kind]
        if kind == "fill pressure":
            limits = {"min": "1.2", "max": "1.5", "unit": "bar"}
            action["readings"] = [{"what": "gauge", "limits": limits, "source": "invented"}]
        if on:
            action["on"] = list(on)
            words += f" at {self.the(on)}"
        if at:
            action["at"] = at
            words += f" at {self.the([at])}"
        self.step("recommission", f"{words}.", action)

    # --- the file ----------------------------------------------------------------------------------------

    def procedure(self, steps=None):
        """The object of the file; `steps` replace the steps as they were written."""
        used = {circuit["kind"] for circuit in self.circuits}
        answers = [(kind, "here, touched" if kind in used else "not on this appliance") for kind in ALL_KINDS]
        steps = self.steps if steps is None else steps
        return {
            "putback": 1,
            "id": self.name,
            "title": self.title,
            "purpose": "Take the parts off and put them back (invented)",
            "applies_to": "An appliance that does not exist",
            "language": "en",
            "note": NOTE,
            "census": [{"kind": kind, "answer": answer} for kind, answer in answers],
            "map": {
                "circuits": self.circuits,
                "isolators": self.isolators,
                "components": self.components,
                "connections": self.connections,
                "seals": self.seals,
                "temporary": self.temporary,
                "settings": [],
            },
            "steps": [{"id": f"s{n:02}", **step} for n, step in enumerate(steps, 1)],
        }


def write(procedure, folder):
    """Writes a procedure as its file and gives the path."""
    path = folder / f"{procedure['id']}.putback.json"
    path.write_text(json.dumps(procedure, ensure_ascii=False, indent=2) + "\n", encoding="utf-8")
    return path
