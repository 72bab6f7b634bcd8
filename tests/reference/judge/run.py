"""The outside judge: the planning library and `putback check` look at the same files and must agree.

Usage: python run.py PUTBACK FOLDER [--keep FOLDER] [--random N] [--seed N]
PUTBACK is the command line, FOLDER a folder for the files that are made (emptied before); --keep puts a dozen
of them with the judge's verdicts into another folder, for the test that needs no Python. Cases are the small
job of the reference with its bad plans and mutants, and 300 random small jobs. Compared are order (isolation,
pressure, gas, a test in the wrong state), put-back and retest: whether something is wrong, what, and the first
step that fails. Findings about the end stand at the step that left something, so of those only what is compared.
"""

import argparse
import json
import subprocess
import sys
import time
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

import unified_planning

import random_jobs
import small_job
from paper import write
from translate import END, Opinion, opinion_of

N_RANDOM = 300
SEED = 2
N_SHOWN = 5

# The cases that are kept: the first of each of these rows of the table, random ones before the small job.
KEPT = (
    "as it should be",
    "at the end: putback",
    "at the end: retest",
    "gas/purged-before-tested",
    "isolation/not-locked",
    "isolation/restored-guard-off",
    "pressure/restored-open",
    "pressure/still-fed",
    "putback/covers-unfinished",
    "reading/wrong-state",
    "retest/not-visible",
    "retest/order",
)

# What is compared. A test in a state in which it shows nothing is a matter of order.
FAMILIES = ("isolation/", "pressure/", "gas/", "putback/", "retest/", "reading/wrong-state")

# Found at the end of the job, reported at the step that left it.
OMISSIONS = (
    "putback/left-open",
    "putback/left-slack",
    "putback/left-off",
    "putback/temp-left",
    "putback/temp-gone",
    "putback/supply-off",
    "putback/left-on",
    "retest/missing",
)


@dataclass
class Case:
    """One file, and what each of the two says of it."""

    procedure: dict
    theirs: Opinion
    ours: Opinion = None


def our_opinion(report):
    """The opinion of `putback check`, in the judge's terms."""
    findings = [f for f in report["findings"] if f["level"] == "reject" and f["code"].startswith(FAMILIES)]
    if not findings:
        return Opinion(True)
    failing = [f for f in findings if f["code"] not in OMISSIONS]
    if not failing:
        return Opinion(False, END, sorted({f["code"] for f in findings}))
    first = min(f["step"] for f in failing)
    return Opinion(False, first, sorted({f["code"] for f in failing if f["step"] == first}))


def disagreement(case):
    """How the two differ, or nothing."""
    theirs, ours = case.theirs, case.ours
    if theirs.valid != ours.valid:
        return "verdict"
    if theirs.step != ours.step:
        return "first failing step"
    # Ours may name more that is wrong with the same step.
    if not set(theirs.codes) <= set(ours.codes):
        return "reason"
    return None


def check(putback, folder):
    """The reports of `putback check` on all files of a folder, by the id of the procedure."""
    command = [putback, "check", "--format", "json", "--today", "2026-11-25", str(folder)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode not in (0, 1):
        sys.exit(f"putback check ended with {done.returncode}: {done.stderr}{done.stdout[:500]}")
    return {Path(r["file"]).name.removesuffix(".putback.json"): r for r in json.loads(done.stdout)}


def kind_of(opinion):
    """The row of the table in which a case is counted."""
    if opinion.valid:
        return "as it should be"
    if opinion.step == END:
        return "at the end: " + ", ".join(sorted({code.split("/")[0] for code in opinion.codes}))
    return opinion.codes[0]


def shown(opinion):
    if opinion.valid:
        return "nothing wrong"
    where = "at the end" if opinion.step == END else f"at step {opinion.step}"
    return f"{where}: {', '.join(opinion.codes)}"


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("putback")
    parser.add_argument("folder", type=Path)
    parser.add_argument("--keep", type=Path)
    parser.add_argument("--random", type=int, default=N_RANDOM)
    parser.add_argument("--seed", type=int, default=SEED)
    given = parser.parse_args()
    empty(given.folder)
    began = time.monotonic()
    small = small_job.cases()
    procedures = [case.procedure for case in small] + list(random_jobs.procedures(given.random, given.seed))
    cases = {}
    for procedure in procedures:
        write(procedure, given.folder)
        cases[procedure["id"]] = Case(procedure, opinion_of(procedure))
    if given.keep:
        known = list(cases.values())
        keep(given.putback, given.keep, known[len(small) :] + known[: len(small)])
    for name, report in check(given.putback, given.folder).items():
        cases[name].ours = our_opinion(report)

    differing = [(disagreement(case), case) for case in cases.values() if disagreement(case)]
    table(cases.values())
    unlike = [line for case in small for line in case.unlike_the_domain(cases[case.procedure["id"]].theirs)]
    print(f"{len(cases)} files, {len(differing)} disagreements, {time.monotonic() - began:.0f} s")
    for how, case in differing[:N_SHOWN]:
        print(f"\n{case.procedure['id']}: another {how}\n  {case.procedure['title']}")
        print(f"  the judge: {shown(case.theirs)}\n  putback:   {shown(case.ours)}")
    for line in unlike:
        print(line)
    if differing or unlike:
        sys.stdout.flush()
        sys.exit(f"\nthe judge and putback disagree; the files are in {given.folder}")


def empty(folder):
    folder.mkdir(parents=True, exist_ok=True)
    for old in folder.glob("*.json"):
        old.unlink()


def keep(putback, folder, cases):
    """Keeps a dozen cases with what the judge says of them, laid out as the editor saves them."""
    empty(folder)
    rows = []
    for kind in KEPT:
        case = next((case for case in cases if kind_of(case.theirs) == kind), None)
        if case is None:
            sys.exit(f"no case to keep: {kind}")
        path = write(case.procedure, folder)
        subprocess.run([putback, "fmt", str(path)], check=True, capture_output=True)
        rows.append({"file": path.name, "valid": case.theirs.valid, "step": case.theirs.step, "codes": case.theirs.codes})
    lines = ",\n".join("    " + json.dumps(row) for row in rows)
    text = '{\n  "made_by": "tests/reference/judge/run.py",\n'
    text += f'  "library": "unified_planning {unified_planning.__version__}, SequentialPlanValidator",\n'
    text += f'  "cases": [\n{lines}\n  ]\n}}\n'
    (folder / "verdicts.json").write_text(text, encoding="utf-8")


def table(cases):
    """Prints how often the two agree, by what the judge finds."""
    agree, differ = Counter(), Counter()
    for case in cases:
        (differ if disagreement(case) else agree)[kind_of(case.theirs)] += 1
    print(f"{'what the judge finds first':42} {'agree':>6} {'differ':>6}")
    for kind in sorted(agree | differ):
        print(f"{kind:42} {agree[kind]:6} {differ[kind]:6}")


if __name__ == "__main__":
    main()
