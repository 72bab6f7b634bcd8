"""Makes small_job.json: the verdicts of the planning library on the small job in its own planning language.

Usage: python make_small_job.py > small_job.json (`./dev reference` does it in an environment of its own).
The job (small_job_domain.pddl, small_job_problem.pddl) is an invented pump swap: the valid plan, five bad
plans, and as mutants every plan with one action left out and every plan with two neighbours swapped.
"""

import json
import warnings
from pathlib import Path

import unified_planning
from unified_planning.engines import SequentialPlanValidator, ValidationResultStatus
from unified_planning.io import PDDLReader
from unified_planning.plans import ActionInstance, SequentialPlan
from unified_planning.shortcuts import get_environment

HERE = Path(__file__).parent

VALID = (
    "isolate elec|isolate gas|isolate mains_water|prove_dead elec|remove case|drain ch|break_joint plug pump|"
    "break_joint union_in pump|break_joint union_out pump|remove pump|fit pump|make_joint union_in pump|"
    "make_joint union_out pump|make_joint plug pump|fill ch|test leak_test ch|fit case|restore mains_water|"
    "restore gas|restore elec"
).split("|")


def without(*left_out):
    return [action for action in VALID if action not in left_out]


def plans():
    """Every plan with its name."""
    yield "valid", VALID
    yield "bad1_joint_broken_under_pressure", without("drain ch")
    yield "bad2_not_proved_dead", without("prove_dead elec")
    yield "bad3_refilled_with_open_joint", without("make_joint union_out pump")
    yield "bad4_energised_before_test", [*without("test leak_test ch"), "test leak_test ch"]
    yield "bad5_goal_not_reached", without("restore mains_water", "restore gas", "restore elec")
    for i in range(len(VALID)):
        yield f"drop{i}", VALID[:i] + VALID[i + 1 :]
    for i in range(len(VALID) - 1):
        yield f"swap{i}_{i + 1}", VALID[:i] + [VALID[i + 1], VALID[i]] + VALID[i + 2 :]


def judged(problem, plan):
    """Whether a plan is valid, and the position of the first action that cannot be carried out."""
    actions, expressions = [], problem.environment.expression_manager
    for words in plan:
        name, *things = words.split()
        things = [expressions.ObjectExp(problem.object(thing)) for thing in things]
        actions.append(ActionInstance(problem.action(name), things))
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        result = SequentialPlanValidator().validate(problem, SequentialPlan(actions))
    failed = result.inapplicable_action
    at = next((i for i, action in enumerate(actions) if action is failed), None)
    return result.status == ValidationResultStatus.VALID, at


def main():
    get_environment().credits_stream = None
    problem = PDDLReader().parse_problem(HERE / "small_job_domain.pddl", HERE / "small_job_problem.pddl")
    rows = []
    for name, plan in plans():
        valid, at = judged(problem, plan)
        rows.append("    " + json.dumps({"id": name, "valid": valid, "failed_action": at, "plan": plan}))
    print("{")
    print('  "made_by": "tests/reference/judge/make_small_job.py",')
    print(f'  "library": "unified_planning {unified_planning.__version__}, SequentialPlanValidator",')
    print('  "plans": [\n' + ",\n".join(rows) + "\n  ]")
    print("}")


if __name__ == "__main__":
    main()
