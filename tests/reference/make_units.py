"""Makes units.json: conversions by pint, an independent library, to check our own against.

Usage: python make_units.py > units.json (`./dev reference` does it in an environment of its own).
Each group holds units of one quantity: the UCUM code that our files use, and pint's name for it.
"""

import json

import pint

GROUPS = {
    "pressure": {
        "bar": "bar",
        "mbar": "millibar",
        "kPa": "kilopascal",
        "Pa": "pascal",
        "[psi]": "pound_force_per_square_inch",
        "[in_i'H2O]": "cmH2O * inch / centimeter",
    },
    "torque": {"N.m": "newton * meter", "[lbf_av].[ft_i]": "force_pound * foot"},
    "length": {"mm": "millimeter", "m": "meter", "[in_i]": "inch"},
    "mass": {"kg": "kilogram", "[lb_av]": "pound"},
    "temperature": {"Cel": "degree_Celsius", "[degF]": "degree_Fahrenheit"},
    "time": {"s": "second", "min": "minute", "h": "hour"},
    "voltage": {"V": "volt"},
    "current": {"A": "ampere"},
    "resistance": {"Ohm": "ohm", "MOhm": "megaohm"},
    "volume": {"L": "liter", "m3": "meter ** 3"},
    "volume flow": {"L/min": "liter / minute", "m3/h": "meter ** 3 / hour"},
    "power": {"kW": "kilowatt"},
    "fraction": {"%": "percent", "[ppm]": "ppm"},
}

VALUES = [0.0, 1.0, 12.5, -40.0, 0.037, 230.0, 98765.4321]


def cases(registry):
    """Every value from every unit of a group to every unit of it."""
    for units in GROUPS.values():
        for source, source_name in units.items():
            for target, target_name in units.items():
                for value in VALUES:
                    quantity = registry.Quantity(value, source_name)
                    result = quantity.to(target_name).magnitude
                    yield {"value": value, "from": source, "to": target, "result": float(result)}


def main():
    registry = pint.UnitRegistry()
    lines = ",\n".join("    " + json.dumps(case) for case in cases(registry))
    print("{")
    print('  "made_by": "tests/reference/make_units.py",')
    print(f'  "library": "pint {pint.__version__}",')
    print('  "cases": [\n' + lines + "\n  ]")
    print("}")


main()
