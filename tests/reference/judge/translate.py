"""Translates a procedure file into a planning problem and lets the planning library judge it.

Reads the file alone: neither the trace nor the findings of `putback`. The plan is the file's actions in order;
the library's validator says whether it is valid, which action is the first that cannot be carried out, and
whether the end is reached. What the judge does not know raises `NotTranslated`; it never guesses.

Usage: python translate.py FILE... prints the judge's opinion of each file.
"""

import json
import sys
from dataclasses import dataclass, field

import unified_planning
from unified_planning.engines import SequentialPlanValidator, ValidationResultStatus
from unified_planning.model.walkers import StateEvaluator
from unified_planning.plans import ActionInstance, SequentialPlan
from unified_planning.shortcuts import InstantaneousAction, get_environment

from actions import Actions
from appliance import Appliance, NotTranslated
from world import World

get_environment().credits_stream = None

END = "end"


@dataclass
class Opinion:
    """What the judge says: valid, or where the job fails first and for which reasons."""

    valid: bool
    step: object = None  # the number of the step, or END
    codes: list = field(default_factory=list)


def opinion_of(procedure):
    """The judge's opinion of one procedure, given as the object of its file."""
    if procedure.get("questions") or procedure.get("goals"):
        raise NotTranslated("questions or goals")
    world = World(Appliance(procedure["map"]))
    actions = Actions(world)
    plan, known = [], {}
    for number, step in enumerate(procedure["steps"], 1):
        if step.get("when"):
            raise NotTranslated("a step that depends on an answer")
        for action in step.get("actions", []):
            for planned in actions.planned(action):
                name = f"{len(plan)} step {number} {action['do']}"
                plan.append(add(world, name, planned))
                known[name] = (number, planned)
    end = actions.end()
    for _, formula in end:
        world.problem.add_goal(formula)
    result = SequentialPlanValidator().validate(world.problem, SequentialPlan(plan))
    if result.status == ValidationResultStatus.VALID:
        return Opinion(True)
    holds = StateEvaluator(world.problem)
    state = result.trace[-1]
    if result.inapplicable_action is None:
        return Opinion(False, END, codes_of([[goal] for goal in end], holds, state))
    number, planned = known[result.inapplicable_action.action.name]
    return Opinion(False, number, codes_of(planned.demands, holds, state))


def add(world, name, planned):
    """Makes a planning action of demands and effects."""
    action = InstantaneousAction(name)
    for chain in planned.demands:
        for _, formula in chain:
            action.add_precondition(formula)
    for fluent, value, condition in planned.effects:
        action.add_effect(fluent, value, condition)
    world.problem.add_action(action)
    return ActionInstance(action)


def codes_of(chains, holds, state):
    """The first reason of each chain that is not met."""
    codes = []
    for chain in chains:
        failing = [code for code, formula in chain if not holds.evaluate(formula, state).bool_constant_value()]
        codes += [code for code in failing[:1] if code not in codes]
    return codes


def main():
    print(f"unified_planning {unified_planning.__version__}")
    for path in sys.argv[1:]:
        with open(path, encoding="utf-8") as file:
            print(path, opinion_of(json.load(file)))


if __name__ == "__main__":
    main()
